"""Back Bedroom, invented: six units on a deck of rails, 420 x 320, 20 thick, 60 clear below.

Each row of leads, worked on paper from the route model: number, ends, plugs, run, both exit points in mm, the drop lines
of the ends on top (- for none), stretches along x and y, stretches in height, slack, finished length, cut length (- for
premade ends), next premade length (- for none).

D4: the supply hangs in its way, from x = 120 to 310 and y = 225 to 285, 45 high. Round it by its right edge: 60 + 110
instead of 50 along x, 120 more; by its left edge: 130 + 80, 160 more. Beneath it, where 45 + 15 = 60 is just enough:
45 down and 45 up, 90 more. 321 in all, and 40 of slack: 370.
"""

from __future__ import annotations

from boards_by_hand import board, deck, stand

BOARD = board(
    deck(420, 320, 20, 65, 145, 220, 302, clearance=60),
    stand("plumb", 265, 10, "46 94 50", "in:R50/22 out:L50/22 dc:B23/22"),
    stand("hedge", 150, 10, "75 115 48", "in:R70/24 out:L70/24 dc:B37/24"),
    stand("marl", 40, 10, "70 120 55", "in:R80/25 out:L80/25 dc:B35/33"),
    stand("millpond", 290, 162, "70 120 55", "in:R80/25 out:L80/25 dc:B35/33"),
    stand("lant", 165, 162, "70 120 58", "in:B52/30 out:B18/30 dc:B35/44"),
    stand("rotunda", 40, 162, "70 120 58", "in:R85/25 out:L85/25 dc:B35/33"),
    stand("mill5", 120, 225, "190 60 45", "o1:F25 o2:F60 o3:F95 o4:F130 o5:F165", under=True),
)
ROWS = """
A2 plumb.out hedge.in flat flat direct 257,60 233,80 - 24+20 2 30 90 114 100
A3 hedge.out marl.in flat flat direct 142,80 118,90 - 24+10 1 30 90 114 100
A4 marl.out millpond.in flat flat under 32,90 368,242 65,220 336+25+155+22 55+55 64.8 720 744 750
A5 millpond.out lant.in flat angle direct 282,242 217,292 - 65+50 5 30 150 176 150
A6 lant.out rotunda.in angle flat direct 183,292 118,247 - 65+45 5 30 150 176 150
D1 mill5.o1 hedge.dc dc dc under 145,218 187,132 145 42+73+13 10+54 40 240 - 300
D2a mill5.o2 marl.dc dc dc under 180,218 75,137 145 105+73+8 10+63 40 300 - 300
D2b mill5.o2 millpond.dc dc dc under 180,218 325,289 302 145+84+13 10+63 40 360 - 450
D3 mill5.o3 plumb.dc dc dc under 215,218 288,111 145 73+73+34 10+52 40 290 - 300
D4 mill5.o4 lant.dc dc dc under 250,218 200,289 302 50+84+13 10+74+90 40 370 - 450
D5 mill5.o5 rotunda.dc dc dc under 285,218 75,289 302 210+84+13 10+63 40 420 - 450
"""
