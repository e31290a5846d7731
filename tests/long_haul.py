"""Long Haul, invented: a touring board of 18 units on a plate, 920 x 480, 12 thick, 65 clear below.

Each row of leads, worked on paper from the route model: number, ends, plugs, run, both exit points in mm, the drop lines
of the ends on top (- for none), stretches along x and y, stretches in height, slack, finished length, cut length (- for
premade ends), next premade length (- for none).

What hangs in the way: mill8, x = 60 to 290, y = 200 to 290, 50 high, so that 100 lead beneath it (50 + 15 = 65 is just
enough); weir8, x = 330 to 580, y = 330 to 405, 45 high, 90 beneath it.
A09 217 to 196: round the right edge 73 + 94 instead of 21, 146 more; beneath 100.
A10 214 to 197: right 76 + 93 instead of 17, 152 more; beneath 100.
A11 112 to 232: left 52 + 172 instead of 120, 104 more; right 178 + 58, 116 more; beneath 100.
A12 250 to 92: left 190 + 32 instead of 158, 64 more; right 40 + 198, 80 more: round, 64.
D04 161 to 262: left 101 + 202 instead of 101, 202 more; right 129 + 28, 56 more: round, 56.
D10 380 to 375: left 50 + 45 instead of 5, 90 more; beneath 90, as long with one bend less.
"""

from __future__ import annotations

from boards_by_hand import board, deck, panel, stand

_LOOPS = " ".join(f"s{k}:B{14 + 36 * k}/40 r{k}:B{32 + 36 * k}/40" for k in range(1, 9))
_STEREO = "inl:B95/30 inr:B75/30 dc:B55/30 outr:B35/30 outl:B15/30 midi:R60/20 exp:L60/20"
_STOMP = "in:R80/25 out:L80/25 dc:B35/33"
_MILL = " ".join(f"a{k}:F{20 + 27 * (k - 1)}" for k in range(1, 9))
_WEIR = " ".join(f"b{k}:F{20 + 30 * (k - 1)}" for k in range(1, 9))

BOARD = board(
    deck(920, 480, 12, 150, 307, 464, clearance=65),
    stand("signalbox", 20, 15, "420 110 65", f"in:B20/40 {_LOOPS} out:B350/40 midi:B380/20 dc:B402/40"),
    stand("plumb", 470, 15, "46 94 50", "in:R50/22 dc:B23/22"),
    stand("lever", 545, 15, "95 240 75", "out:B47/20"),
    stand("slipway", 655, 15, "100 260 85", "in:B80/22 tun:B50/22 out:B20/22"),
    stand("teeter", 795, 15, "100 250 95", "in:R180/20 out:L180/20 dc:L215/20"),
    stand("claypit", 20, 175, "62 112 50", "in:R75/24 out:L75/24 dc:B31/24"),
    stand("lapwing", 122, 175, "65 120 50", "in:R80/25 out:L80/25 dc:B33/30"),
    stand("marl", 227, 175, "70 120 55", _STOMP),
    stand("bramble", 337, 175, "70 120 55", _STOMP),
    stand("settle", 447, 175, "70 120 55", _STOMP),
    stand("rotundaxl", 20, 325, "110 125 60", _STEREO),
    stand("lantxl", 170, 325, "110 125 60", _STEREO),
    stand("weathervane", 320, 325, "110 125 60", _STEREO),
    stand("stepladder", 470, 325, "70 125 60", "in:R90/25 out:L90/25 dc:B35/35"),
    stand("echomill", 580, 325, "70 125 60", "in:B52/30 out:B18/30 dc:B35/44"),
    stand("heron", 690, 325, "105 95 40", "out:B25/20 dc:B80/20"),
    stand("canaltwo", 690, 340, "120 60 40", "inl:F30/20 inr:F90/20 outl:B30/20 outr:B90/20", under=True),
    stand("fan4", 560, 200, "100 60 35", "in:F20/18 t1:B20/18 t2:B40/18 t3:B60/18 t4:B80/18 dc:F80/18", under=True),
    stand("mill8", 60, 200, "230 90 50", _MILL, under=True),
    stand("weir8", 330, 330, "250 75 45", _WEIR, under=True),
    panels=(panel("panel", l=(840, 470), r=(870, 470)),),
)
ROWS = """
A01 heron.out signalbox.in angle angle under 715,430 40,135 464,150 675+34+314+15 42+62 114.2 1260 1288 1200
A02 signalbox.s1 teeter.in angle angle under 70,135 905,195 150,150 835+15+0+45 62+42 99.9 1100 1128 1200
A03 teeter.out signalbox.r1 angle angle under 785,195 88,135 150,150 697+45+0+15 42+62 86.1 950 978 900
A04 signalbox.s2 settle.in angle angle under 106,135 527,255 150,307 421+15+157+52 62+47 75.4 830 858 900
A05 settle.out signalbox.r2 angle angle under 437,255 124,135 307,150 313+52+157+15 47+62 64.6 720 748 750
A06 signalbox.s3 bramble.in angle angle under 142,135 417,255 150,307 275+15+157+52 62+47 60.8 670 698 750
A07 bramble.out signalbox.r3 angle angle under 327,255 160,135 307,150 167+52+157+15 47+62 50 550 578 600
A08 signalbox.s4 marl.in angle angle under 178,135 307,255 150,307 129+15+157+52 62+47 46.2 510 538 600
A09 marl.out signalbox.r4 angle angle under 217,255 196,135 307,150 21+52+157+15 47+62+100 45.4 500 528 600
A10 signalbox.s5 lapwing.in angle angle under 214,135 197,255 150,307 17+15+157+52 62+47+100 45 500 528 600
A11 lapwing.out signalbox.r5 angle angle under 112,255 232,135 307,150 120+52+157+15 47+62+100 55.3 610 638 600
A12 signalbox.s6 claypit.in angle angle under 250,135 92,250 150,307 158+15+157+57+64 62+46 55.9 620 648 600
A13 claypit.out signalbox.r6 angle angle under 10,250 268,135 307,150 258+57+157+15 46+62 59.5 660 688 750
A14 signalbox.s7 stepladder.in angle angle under 286,135 550,415 150,464 264+15+314+49 62+47 75.1 830 858 900
A15 stepladder.out signalbox.r7 angle angle under 460,415 304,135 464,150 156+49+314+15 47+62 64.3 710 738 750
A16 signalbox.s8 echomill.in angle angle under 322,135 632,460 150,464 310+15+314+4 62+52 75.7 840 868 900
A17 echomill.out signalbox.r8 angle angle under 598,460 340,135 464,150 258+4+314+15 52+62 70.5 780 808 750
A18 signalbox.out slipway.in angle angle under 370,135 735,285 150,307 365+15+157+22 62+44 66.5 740 768 750
A19 slipway.tun plumb.in angle angle under 705,285 526,65 307,150 179+22+157+85 44+44 53.1 590 618 600
A20 slipway.out weathervane.inl angle angle under 675,285 415,460 307,464 260+22+157+4 44+52 53.9 600 628 600
A21 weathervane.outl lantxl.inl angle angle direct 335,460 265,460 - 70+0 0 30 100 128 100
A22 weathervane.outr lantxl.inr angle angle direct 355,460 245,460 - 110+0 0 30 140 168 150
A23 lantxl.outl rotundaxl.inl angle angle direct 185,460 115,460 - 70+0 0 30 100 128 100
A24 lantxl.outr rotundaxl.inr angle angle direct 205,460 95,460 - 110+0 0 30 140 168 150
A25 rotundaxl.outl canaltwo.inl angle angle under 35,460 720,330 464 685+4+134 52+10 88.5 980 1008 1200
A26 rotundaxl.outr canaltwo.inr angle angle under 55,460 780,330 464 725+4+134 52+10 92.5 1020 1048 1200
A27 canaltwo.outl panel.l angle panel under 720,410 840,470 - 120+60 10+10 30 230 258 -
A28 canaltwo.outr panel.r angle panel under 780,410 870,470 - 90+60 10+10 30 200 228 -
C01 lever.out lantxl.exp angle angle under 592,265 160,385 307,307 432+42+0+78 42+42 63.6 700 728 750
M01 signalbox.midi fan4.in mini mini under 400,132 580,193 150 180+18+43 42+10 40 340 - 600
M02 fan4.t1 weathervane.midi mini mini under 580,267 437,385 307 143+40+78 10+42 40 360 - 600
M03 fan4.t2 lantxl.midi mini mini under 600,267 287,385 307 313+40+78 10+42 48.3 540 - 600
M04 fan4.t3 rotundaxl.midi mini mini under 620,267 137,385 307 483+40+78 10+42 65.3 720 - 900
D01 mill8.a1 teeter.dc dc dc under 80,193 788,230 307 708+114+77 10+42 95.1 1050 - 1200
D02 mill8.a2 settle.dc dc dc under 107,193 482,302 307 375+114+5 10+55 55.9 620 - 600
D03 mill8.a3 bramble.dc dc dc under 134,193 372,302 307 238+114+5 10+55 42.2 470 - 600
D04 mill8.a4 marl.dc dc dc under 161,193 262,302 307 101+114+5+56 10+55 40 390 - 450
D05 mill8.a5 claypit.dc dc dc under 188,193 51,294 307 137+114+13 10+46 40 360 - 450
D06 mill8.a6 plumb.dc dc dc under 215,193 493,116 150 278+43+34 10+44 40.9 450 - 450
D07 mill8.a7 echomill.dc dc dc under 242,193 615,457 464 373+271+7 10+66 72.7 800 - 900
D08 mill8.a8 stepladder.dc dc dc under 269,193 505,457 464 236+271+7 10+57 58.1 640 - 900
D09 weir8.b1 signalbox.dc dc dc under 350,323 422,132 150 72+173+18 10+62 40 380 - 450
D10 weir8.b2 weathervane.dc dc dc under 380,323 375,457 464 5+141+7 10+52+90 40 350 - 450
D11 weir8.b3 lantxl.dc dc dc under 410,323 225,457 464 185+141+7 10+52 40 440 - 450
D12 weir8.b4 rotundaxl.dc dc dc under 440,323 75,457 464 365+141+7 10+52 57.5 640 - 900
D13 weir8.b5 heron.dc dc dc under 470,323 770,427 464 300+141+37 10+42 53 590 - 600
D14 weir8.b6 lapwing.dc dc dc under 500,323 155,302 307 345+16+5 10+52 42.8 480 - 600
D15 weir8.b7 fan4.dc dc dc under 530,323 640,193 - 110+130 10+10 40 300 - 300
"""
