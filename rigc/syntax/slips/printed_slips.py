"""A line as plates, leaflets, other programs or daily speech have it, which can be written in this language as it stands -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal

from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.slips.said_codes import COLOURS

_LABELS = {"revision": "a revision is a capital letter and its date", "body": "width x depth x height"}
_MOST_OUTLETS = 64
_TO_A = 440.0  # Hz, of the note A4 (ISO 16)
_SEMITONES = {"C": -9, "D": -7, "E": -5, "F": -4, "G": -2, "A": 0, "B": 2}
_COUNTS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_MONEY = {"$": "USD", "€": "EUR", "£": "GBP", "¥": "JPY"}
_SLOW = {
    "slow": "T",
    "slow-blow": "T",
    "time-lag": "T",
    "anti-surge": "T",
    "fast": "F",
    "quick": "F",
    "quick-blow": "F",
    "medium": "M",
}
_UNIT = r"mA|A|mm|cm|mV|V|mW|W|VA|kHz|Hz|kg|g|awg|AWG|dBu|dB|kohm|Mohm|ohm|ms|mAh|Ah|Wh|pF|nF"
_LETTERED = ("revision", "follows", "as-built", "retired", "tie")
"""Statements in which a capital letter is no unit."""
_N = r"\d+(?:\.\d+)?"
_DASH = "(?:--|—|–)"
_POLES = {"neg": "negative", "pos": "positive"}
_MIDI_KIND = r"((?:5|five)?[ \t-]*pins?[ \t-]*din|(?:5|five)[ \t-]*pins?|din|mini-trs)\b"

_Made = str | Callable[[re.Match[str]], str]


def _turned(found: re.Match[str]) -> str:
    """The number before its unit; as it stands where the unit belongs to the number before it."""
    if re.search(r"\d[ \t]*\Z", found.string[: found.start()]):
        return found[0]
    return f"{found[2]} {found[1].replace('AWG', 'awg')}"


_WRITTEN: tuple[tuple[str, str, _Made], ...] = (
    # the statements (or, behind an @, the block) in which it may stand, what stands there, what it is here
    ("mains", r"([ \t]*)\bmains[ \t]+(1\d\d)[ \t]*V?[ \t]*(?:/|or|and)[ \t]*(2\d\d)[ \t]*V?(?:AC|ac|~)?[ \t,]*([^#]*?)(?=[ \t]*\Z)", lambda found: f"{found[1]}mains {found[2]} V {_hertz(found[4])}\n{found[1]}mains {found[3]} V {_hertz(found[4])}"),
    ("mains", r"(\d+)[ \t]*V?[ \t]*(?:-|–|/|to)[ \t]*(\d+)[ \t]*V?(?:AC|ac|~)?[ \t,/~]*(\d+)[ \t]*(?:-|–|/|to)[ \t]*(\d+)[ \t]*Hz", r"\1..\2 V \3..\4 Hz"),
    ("mains", r"(\d+)[ \t]*V?[ \t]*(?:-|–|to)[ \t]*(\d+)[ \t]*V?(?:AC|ac|~)?[ \t,/~]*(\d+)[ \t]*Hz", r"\1..\2 V \3 Hz"),
    ("mains", r"(\d+)[ \t]*V[ \t]*(?:AC|ac|~)[ \t,/~]*(\d+)[ \t]*Hz", r"\1 V \2 Hz"),
    ("mains", r"(\d{3})[ \t]*V?[ \t]*/[ \t]*(50|60)(?:[ \t]*Hz)?(?![\d.])", r"\1 V \2 Hz"),
    ("mains", rf"(?<=V)[ \t]*(?:\+-|±|\+/-)?[ \t]*({_N})[ \t]*%", r" within \1 %"),
    ("volume tone", rf"(?<=[A-Za-zΩ])[ \t]+({_N}[ \t]*%)", r" at \1"),
    ("battery", r"(\d+[ \t]*V)[ \t]*\"([^\"]*)\"", r'"\1 \2"'),
    ("battery", r"\bonly[ \t]+(\"[^\"]*\")([^#]*?)(?=[ \t]*\Z)", r"\1\2 only"),
    ("phase inverting inverted inverse", r"^([ \t]*)(?:phase[ \t]+)?(?:invert(?:ed|ing|s)?|inverse|reversed)(?=[ \t]*$)", r"\1inverts"),
    ("inlet", r"[ \t]+(?:polarity[ \t]+)?(centre-(?:negative|positive))\b([^#]*?)(?=[ \t]*\Z)", r"\2\npolarity \1"),
    ("outlet inlet", r"\b(?:cable|cord|lead|fixed[ \t]+(?:cable|lead))[ \t]+(?=\d)", "captive "),
    ("material made", r"\b(?:material|made[ \t]+of)[ \t]+(?:wood|plywood|mdf|plastic|birch|oak)\b", "insulating"),
    ("material made", r"\b(?:material|made[ \t]+of)[ \t]+(?:metal|aluminium|aluminum|steel)\b", "bare metal"),
    ("pair", r"([a-z]\w*)[ \t]*(?:\.\.|/|-)[ \t]*([a-z]\w*)", r"\1, \2"),
    ("pair", r"^([ \t]*pair[ \t]+\w+)[ \t]*,?[ \t]*(\w+)[ \t]+(?:stereo|left[ \t]+right)\b", r"\1, \2"),
    ("expression", rf"({_N}[ \t]*[kM]?(?:ohm|Ω))[ \t]+(tip|ring)(?:[ \t-]wiper)?\b", r"\2-wiper \1"),
    ("expression", r"\b(tip|ring)(?=[ \t]+\d)", r"\1-wiper"),
    ("rate price insured", r"(\d+)\.-", r"\1"),
    ("input output", r"(?<=put )[ \t]*(\d{1,2})[ \t]+([a-z])[a-z]*(?=[ \t])", lambda found: f"{found[2]}1..{found[2]}{found[1]}"),
    ("input output outlet loop level phantom rail accepts mains treadle tier band", r"\.{3,}", ".."),
    ("switches", r"^([ \t]*)switches[ \t]+at[ \t]+(\S.*?)[ \t]+(?:and|&)[ \t]+(?:at[ \t]+)?(\S.*?)([ \t]+(?:latching|momentary))?[ \t]*$", lambda found: f"{found[1]}switch at {found[2]}{found[4] or ''}\n{found[1]}switch at {found[3]}{found[4] or ''}"),
    ("set", r"\b(?:to|at)[ \t]+(\d+)[ \t]*%", lambda found: f"at {(6 + round(int(found[1]) / 10)) % 12 + 1} oclock"),
    ("set", r"^([ \t]*set[ \t]+[\w-]+[ \t]+)([a-z][a-z -]*?)(?=[ \t]+at[ \t])", r'\1"\2"'),
    ("outlet", rf"({_N})[ \t]*V?[ \t]+or[ \t]+({_N})[ \t]*V[ \t]*(dc|ac)[ \t]+({_N}[ \t]*m?A)", r"\1 V \3 \4 or \2 V \3 \4"),
    ("", r"^([a-z][\w-]*)\.(\d+)[ \t]*[:=]?[ \t]*(?:holds[ \t]+)?(?=[a-z][\w-]*[ \t]*->)", r"loop \2 of \1 holds "),
    ("insured price rate", r"\b([A-Z]{3})[ \t]*(\d[\d.]*)", r"\2 \1"),
    ("serial", r"\b(?:no\.?|number|nr\.?|#)[ \t:]*(?=\")", ""),
    ("antenna aerial", r"^([ \t]*)(?:antenna|aerial)[ \t]+([a-z][\w-]*)(?=[ \t]*$)", r"\1input \2 wireless"),
    ("hand-operated hand not by no", r"^([ \t]*)(?:hand-operated|hand[ \t]+operated|by[ \t]+hand|not[ \t]+worked[ \t]+by[ \t]+foot|no[ \t]+foot)(?=[ \t]*$)", r"\1worked by hand"),
    ("hole", rf"({_N})([ \t]*mm)?[ \t]*x[ \t]*\1[ \t]*mm", r"\1 mm"),
    ("chain", r"(?<=[ \t])([a-z][\w-]*)[ \t]+(?:jack|input|output)[ \t]+([a-z][\w-]*)", r"\1.\2"),
    ("spare backup second emergency", r"^([ \t]*)(?:spare|backup|second|emergency)[ \t]+(?=lead[ \t]+\d)", r"\1plain "),
    ("conductor", r"\bAWG[ \t-]*(\d+)", r"\1 awg"),
    ("class", r"\bclass[ \t]+(?:II|2)(?=[ \t]*\Z)", "double-insulated"),
    ("class", r"\bclass[ \t]+(?:I|1)(?=[ \t]*\Z)", "earthed"),
    ("input output", r"(?<=put )[ \t]*(?:channel|ch|in|out|input|output|jack|no\.?)[ \t]+(\d{1,2})(?=[ \t])", r"ch\1"),
    ("input output inlet outlet midi expression control usb jack", r"\b(?:height|above|z)[ \t]+(?=\d)", "up "),
    ("input output inlet outlet midi expression control usb", r"[ \t]+from[ \t]+(?:the[ \t]+)?(?:front|left)(?:[ \t]+edge)?(?=[ \t]+up\b|[ \t]*\Z)", ""),
    ("volume tone", r"(?:[ \t]+(?:audio|log|linear|lin|taper))+(?=[ \t]|\Z)", ""),
    ("chain", r"(?<=chain)[ \t]+from[ \t]+(?=[a-z])", " "),
    ("chain loop", r"[ \t]*\([^()#>]*\)", ""),
    ("chain", r"\b([a-z][\w-]*)[ \t]+(in|out)(?=[ \t]*(?:->|=>|\Z))", r"\1.\2"),
    ("path route order line", r"^([ \t]*)(?:path|route|order|line)[ \t:=]+(?=[a-z][\w.-]*[ \t]*(?:->|=>))", r"\1chain "),
    ("chain loop @power @leads @midi @control", r"[ \t]*[.,][ \t]*(?=\Z)", ""),
    ("chain loop", r"(->|=>)[ \t]*(?:->|=>)", r"\1"),
    ("chain loop", rf"^[^>#]*[ \t]{_DASH}[ \t][^>#]*(?=\Z)", lambda found: re.sub(rf"[ \t]+{_DASH}[ \t]+", " -> ", found[0])),
    ("rail tier treadle accepts band mains", r"\.\.[ \t]*\.\.", ".."),
    ("insured price rate", r"(\d{1,3})[ \t]+(\d{3})(?=[ \t]*[A-Z]{3})", r"\1\2"),
    ("revision follows", r"\b([A-Z])(\d{4}-\d\d-\d\d)", r"\1 \2"),
    ("on off amps holds done drop loops retired", r"[ \t]*,(?=[ \t]*\Z)", ""),
    ("@supply", rf"^([ \t]*)(?:mains[ \t]+)?(?:input|in)[ \t]+(?={_N}[ \t]*V\b)", r"\1mains "),
    ("@supply", rf"^([ \t]*)(?:outlets[ \t]+)?(\d+)[ \t]*[x×][ \t]*(?={_N}[ \t]*V)", lambda found: f"{found[1]}outlet o1..o{found[2]} " if 1 < int(found[2]) <= _MOST_OUTLETS else found[0]),
    ("@supply", rf"^([ \t]*)(?:output|out|socket)s?[ \t]+([a-z]+\d*(?:\.\.[a-z]*\d+)?[ \t]+{_N}[ \t]*V)\b", r"\1outlet \2"),
    ("takes", rf"^([ \t]*)takes[ \t]+({_N})[ \t]*V[ \t]*(dc|ac)(?=[ \t]*\Z)", r"\1needs \2 V \3"),
    ("takes", rf"^([ \t]*)takes[ \t]+({_N}[ \t]*m?A)\b[ \t,]*(?:@|at)[ \t]*({_N})[ \t]*V[ \t]*(dc|ac)?(?=[ \t]*\Z)", lambda found: f"{found[1]}draws {found[2]}\n{found[1]}needs {found[3]} V {found[4] or 'dc'}"),
    ("needs", rf"(DC|AC|dc|ac)[ \t]+({_N})[ \t]*V", lambda found: f"{found[2]} V {found[1].lower()}"),
    ("", rf"(?<![\w.])({_UNIT})[ \t]+({_N})(?![\w.])", _turned),
    ("", rf"([$€£¥])[ \t]*({_N})", lambda found: f"{found[2]} {_MONEY[found[1]]}"),
    ("", rf"({_N})[ \t]*([$€£¥])", lambda found: f"{found[1]} {_MONEY[found[2]]}"),
    ("", rf"({_N})[ \t]*lbs?[ \t]+({_N})[ \t]*oz", lambda found: f"{float(found[1]) + float(found[2]) / 16:g} lb"),
    ("", rf"({_N})[ \t]*(?:ft|')[ \t]*({_N})[ \t]*(?:in|\")", lambda found: f"{float(found[1]) + float(found[2]) / 12:.4g} ft"),
    ("", rf"({_N})'(?!\w)", r"\1 ft"),
    ("", r"[ \t]+per[ \t]+(?:foot|feet|ft)\b", "/ft"),
    ("", r"[ \t]+per[ \t]+(?:metre|meter|m)\b", "/m"),
    ("", r"mm[ \t]*(?:²|\^2)", "mm2"),
    ("input output outlet loop level phantom", r"\b([a-z]+)(\d+)\.\.(\d+)\b", r"\1\2..\1\3"),
    ("made", r"\bmade[ \t]+in[ \t]+([A-Z]{2})\b", r"origin \1"),
    ("rubber", r"\brubber[ \t]+feet\b", "feet"),
    ("positive negative isolated", r"\b(positive|negative|isolated)[ \t]+ground\b", r"ground \1"),
    ("ground", r"(?<=[ \t])\+(?=[ \t]*\Z)", "positive"),
    ("ground", r"(?<=[ \t])-(?=[ \t]*\Z)", "negative"),
    ("fuse", rf"\b({'|'.join(sorted(_SLOW, key=len, reverse=True))})\b", lambda found: _SLOW[found[1]]),
    ("use", r"\",[ \t]*\"", '"\nuse "'),
    ("import include require load", r"^([ \t]*)(?:import|include|require|load)[ \t]+(?!\"[^\"]*\.rig\")\"?([\w./-]+?)(?:\.rig)?\"?(?=[ \t]*\Z)", r'\1use "\2.rig"'),
    ("version lang rigc", r"^([ \t]*)(?:version|lang|rigc)[ \t:=]+(\d+)(?=[ \t]*\Z)", r"\1language \2"),
    ("revision", r"(?<=revision )[ \t]*([1-9])(?=[ \t])", lambda found: "ABCDEFGHI"[int(found[1]) - 1]),
    ("show", r"(\d+)[ \t]*(?:h|:)[ \t]*(\d\d)(?:[ \t]*(?:min|h)?)(?=[ \t]*\Z)", lambda found: f"{60 * int(found[1]) + int(found[2])} min"),
    ("transformer", r"->|→", "to"),
    ("transformer", r"\bfor\b", "before"),
    ("lift", r"\b(?:lifted|up|floating)\b", "open"),
    ("lift", r"\b(?:grounded|down|joined)\b", "closed"),
    ("tails", r"\b(?:off|no|none)\b", "unwanted"),
    ("tails", r"\b(?:on|yes)\b", "wanted"),
    ("feet", r"\b(?:off|away)\b", "removed"),
    ("feet", r"\b(?:on|yes|rubber)\b", "stay"),
    ("outlet", r"(?<!\bcommon )\b(?:insulated|floating|galvanic(?:ally isolated)?|sep[ea]rated?(?:ly)?|independent|isolate)\b", "isolated"),
    ("outlet", r"\b(isolated|common(?:[ \t]+(?!cent|tip|pol)[a-z][\w-]*)?)[ \t,]+(?:polarity[ \t]+)?(?:cent(?:re|er)|tip)[ \t-]*(neg|pos)[a-z]*\b", lambda found: f"polarity centre-{_POLES[found[2]]} {found[1]}"),
    ("outlet", r"\b(?:individually|separately|all|each)[ \t]+(?=isolated\b)", ""),
    ("outlet", r"\b(?:not isolated|non[ \t-]*isolated|unisolated|daisy-chain(?:ed)?|shared)\b", "common chain"),
    ("outlet", r"(?<=outlet )[ \t]*(\d+)[ \t]*[x×][ \t]+", lambda found: f"o1..o{found[1]} " if int(found[1]) <= _MOST_OUTLETS else found[0]),
    ("outlet", rf"(?<=[ \t])({_N})[ \t]*/[ \t]*({_N})[ \t]*V[ \t]*(dc|ac)[ \t]+({_N}[ \t]*m?A)", r"\1 V \3 \4 or \2 V \3 \4"),
    ("input output", r"[ \t]+(?:isolated?|insulate|plastic)\b([^#]*?)(?=[ \t]*\Z)", r"\1 insulated"),
    ("input output", r"[ \t]+(?:high|hi|low|lo)[ \t-]*(?:impedance|z)\b", ""),
    ("input output", r"(?<=put )[ \t]*([a-z][\w-]*)[ \t]+stereo\b([^#]*?)(?=[ \t]*\Z)", r"\1 trs\2 stereo"),
    ("input output inlet outlet", r"\bside[ \t]+(?=(?:left|right|front|rear)\b)", ""),
    ("inlet", r"(?<=inlet )[ \t]*\d+[ \t]*[vV][ \t]*(?:dc|DC)?(?=[ \t]+(?:barrel|\d))", "dc"),
    ("inlet", r"\b(?:coaxial|coax|hollow|round)(?:[ \t]+(?:plug|jack))?(?=[ \t]+\d)", "barrel"),
    ("inlet", r"\bmini[ \t]+jack\b", "mini-jack"),
    ("input output", r"\b(?:impedance|imp\.?)[ \t:=]+(?=\d)", ""),
    ("input output outlet", r"\b([a-z]+)(\d+)[ \t]+(?:to|till|until|through|thru|-|–)[ \t]+(?:\1)?(\d+)\b", r"\1\2..\1\3"),
    ("inlet", r"\bIEC[ \t]+(?=C\d)", ""),
    ("inlet", r"(?<=inlet )[ \t]*barrel(?=[ \t]+\d)", "dc barrel"),
    ("midi", rf"\b(in|out|thru)(?:put)?[ \t]*(?:and|&|/|\+|,)[ \t]*(in|out|thru)(?:put)?[ \t]+{_MIDI_KIND}(?=[ \t]*\Z)", lambda found: f"{_midi(found[1])} {_kind(found[3])}\nmidi {_midi(found[2])} {_kind(found[3])}"),
    ("midi", rf"\b(in|out|thru)(?:put)?[ \t]+(?:(?:jack|socket)[ \t]+)?{_MIDI_KIND}(?=[ \t]+(?:left|right|front|rear|type)|[ \t]*\Z)", lambda found: f"{_midi(found[1])} {_kind(found[2])}"),
    ("midi", rf"(?<=[ \t]){_MIDI_KIND}(?=[ \t]+(?:left|right|front|rear|type)|[ \t]*\Z)", lambda found: _kind(found[1])),
    ("midi", r"\b5-pin[ \t]+(?=din)", ""),
    ("input output", r"\bhigh(?=[ \t]+\d)", "up"),
    ("input output inlet", r"\b(left|right|front|rear)[ \t]+at(?=[ \t]+\d)", r"\1"),
    ("body inside", r"(?<![\w.])(\d+),(\d+),(\d+)(?=[ \t]*(?:mm|cm|in)\b)", r"\1 x \2 x \3"),
    ("body inside", rf"(?<![\w.])({_N})[ \t]*[-–][ \t]*({_N})[ \t]*[-–][ \t]*({_N})(?=[ \t]*(?:mm|cm|in)\b)", r"\1 x \2 x \3"),
    ("body inside", r"(?<=x)[ \t]*[Hh][:=]?[ \t]*(?=\d)", " "),
    ("size", rf"\b[WwBb][:=]?[ \t]*({_N})[ \t]*[x,]?[ \t]*[DdLl][:=]?[ \t]*({_N})", r"\1 x \2"),
    ("body inside", rf"\b[Ll][:=]?[ \t]*({_N})[ \t]*[x,]?[ \t]*[WwBb][:=]?[ \t]*({_N})[ \t]*[x,]?[ \t]*[Hh][:=]?[ \t]*({_N})", r"\2 x \1 x \3"),
    ("width wide", rf"^([ \t]*)(?:width|wide)[ \t:=]*({_N})[ \t]*(?:mm|cm|in)?[ \t,]*(?:depth|deep|by|x)[ \t:=]*({_N}[ \t]*(?:mm|cm|in))(?=[ \t]*\Z)", r"\1size \2 x \3"),
    ("width wide", rf"^([ \t]*)(?:width|wide)[ \t:=]*({_N})[ \t]*(?:mm|cm|in)?[ \t,]*(?:depth|deep|by|x)[ \t:=]*({_N})[ \t]*(?:mm|cm|in)?[ \t,]*(?:height|high|tall|by|x)[ \t:=]*({_N}[ \t]*(?:mm|cm|in))(?=[ \t]*\Z)", r"\1body \2 x \3 x \4"),
    ("body inside", rf"({_N})[ \t]*,[ \t]+({_N})[ \t]*,[ \t]+({_N})", r"\1 x \2 x \3"),
    ("body inside", rf"(?<![\w.])({_N})[ \t]*/[ \t]*({_N})[ \t]*/[ \t]*({_N})", r"\1 x \2 x \3"),
    ("body inside", rf"(?<![\w.])({_N})[ \t]+({_N})[ \t]+({_N})", r"\1 x \2 x \3"),
    ("size", rf"(?<![\w.])({_N})(?:[ \t]+|[ \t]*/[ \t]*)({_N})(?=[ \t]*(?:mm|cm|m|in)\b)", r"\1 x \2"),
    ("body inside", rf"(?:[WwBb][:=]?[ \t]*)({_N})[ \t]*[x,]?[ \t]*(?:[DdLl][:=]?[ \t]*)({_N})[ \t]*[x,]?[ \t]*(?:[Hh][:=]?[ \t]*)({_N})", r"\1 x \2 x \3"),
    ("body inside", rf"({_N})[ \t]*(?:mm|cm|in)?[ \t]*(?:wide|w)\b[ \t,x]*({_N})[ \t]*(?:mm|cm|in)?[ \t]*(?:deep|long|d)\b[ \t,x]*({_N})[ \t]*(mm|cm|in)?[ \t]*(?:high|tall|h)\b", r"\1 x \2 x \3 \4"),
    ("rate", r"[ \t]*(?:per|an|a|/)[ \t]*(?:hour|hr|h)\b", ""),
    ("volume tone", r"(?<=at )[ \t]*(?:full|max|maximum)\b", "100 %"),
    ("accepts", rf"({_N})[ \t]*V?[ \t]*(?:\+-|\+/-|±)[ \t]*({_N})[ \t]*(%|V)?", lambda found: _window(found)),
    ("input", rf"(?<=input )[ \t]*(?={_N}[ \t]*[kM]?(?:ohm|Ω))", "in ts "),
    ("output", rf"(?<=output )[ \t]*(?={_N}[ \t]*[kM]?(?:ohm|Ω))", "out ts "),
    ("loops", r"\bloops[ \t]+(?=send[ \t]+[a-z]+(\d+)\.\.[a-z]*(\d+))", r"loop \1..\2 "),
    ("fx-loop effects-loop fx", r"^([ \t]*)(?:fx-loop|effects-loop|fx[ \t]+loop|fx)[ \t]+(?=send)", r"\1loop 1 "),
    ("usb-a usb-b usb-c", r"\busb-[abc]\b", "usb"),
    ("inlet", r"(?<=inlet )[ \t]*(?=C\d)", "mains "),
    ("inlet", r"\bc(?=\d+\b)", "C"),
    ("colour", rf"\b({'|'.join(COLOURS)})\b", lambda found: COLOURS[found[1]]),
    ("mates", r"\bhook\b", "loop"),
    ("sockets poles conductors every loop spare preset marker show", rf"\b({'|'.join(_COUNTS)})\b", lambda found: str(_COUNTS.index(found[1]) + 1)),
    ("frozen revision", r"\"(\d{4}-\d\d-\d\d)\"", r"\1"),
    ("lowest", r"\b([A-G])([#b]?)([0-8])\b", lambda found: f"{_pitch(found):.1f} Hz"),
    ("author drawer designer made drawn", r"^([ \t]*)(?:author|drawer|designer|made|drawn)\b(?:[ \t]+by\b)?[ \t:]*([A-Z][^\"#]*?)(?=[ \t]*\Z)", r'\1drawn by "\2"'),
    ("author drawer designer", r"\b(?:author|drawer|designer)(?:[ \t]+by)?\b", "drawn by"),
    ("date dated day", r"^([ \t]*)(?:date|dated|day)[ \t:=]+(\d{4}-\d\d-\d\d)(?=[ \t]*\Z)", r"\1revision A \2"),
    ("for use used", r"^([ \t]*)(?:used?[ \t]+)?(?:for[ \t]+|at[ \t]+|on[ \t]+)?(home|gigging|touring|fly|studio)(?:[ \t]+use)?(?=[ \t]*\Z)", r"\1class \2"),
    ("cable cord", r"\b(?:cable|cord)\b(?=[ \t]+\d)", "lead"),
    ("pot", r"\bpot\b", "volume"),
    ("loop", r"(?<=loop )(\d+)[ \t]+(?=[a-z][\w-]*[ \t]+(?:holds|empty))", r"\1 of "),
    ("loop", r"\b(?:contains|has|with)\b", "holds"),
    ("loop", r":(?=[ \t])", " holds"),
    ("bpm", r"\bbpm[ \t]+(\d+)", r"tempo \1 bpm"),
    ("all", r"\ball[ \t]+others\b", "others"),
    ("hole keep-out", r"(?<=[a-z][ \t])(\"[^\"]*\")[ \t]+(\S.*\S)", r"\2 \1"),
    ("retired", r",[ \t]*([A-Z]\w*)", r"\nretired \1"),
    ("power", r"\bpower[ \t]+(?=(?:cable|plug)[ \t])", "dc "),
    ("signal patch", r"\b(?:signal|patch)[ \t]+(?=(?:cable|plug)[ \t])", "audio "),
    ("lane", r"\bsignal\b", "audio"),
    ("lane", r"\bpower\b", "dc"),
    ("wooden wood coated plywood", r"\b(?:wooden|wood|coated|plywood)\b", "insulating"),
    ("unit instrument source amp desk supply cable plug strip deck", r"\b(?:copy of|same as|as|from)\b", "like"),
    ("@place", rf"\([ \t]*({_N})([ \t]*[a-z]*)[ \t]*,[ \t]*({_N}[ \t]*[a-z]*)[ \t]*\)", r"\1\2, \3"),
    ("@place", r"\b(?:rotated|rotate|rot)[ \t]+(\d+)(?:[ \t]*(?:deg|degrees|°))?", r"turned \1 deg"),
    ("@place", r"^([ \t]*[a-z][\w-]*)[ \t]+(at[ \t]+.*?)[ \t]+under(?:neath)?[ \t]*$", r"\1 under \2"),
    ("@place", r"^([ \t]*[a-z][\w-]*)[ \t]+(?:next to|beside|by|close to)[ \t]+([a-z][\w-]*)[ \t]*$", r"\1, \2 together"),
    ("@place", r"^([ \t]*[a-z][\w, -]*?)[ \t]+(?:(?:is |stands )?(?:on|in|beside|behind|under|next to)[ \t]+(?:the[ \t]+)?(?:floor|ground|board|rack|amp)|outside|external)(?=[ \t]*(?:\"|$))", r"\1 off board"),
    ("@place", r"^([ \t]*)([a-z][\w-]*)[ \t]+between[ \t]+([a-z][\w-]*)[ \t]+and[ \t]+([a-z][\w-]*)[ \t]*$", r"\1\3, \2, \4 in order"),
    ("@place", r"^([ \t]*)([a-z][\w-]*)[ \t]+(?:(?:at|in)[ \t]+(?:the[ \t]+)?)?(front|middle|rear)[ \t,]+(?:and[ \t]+)?(left|middle|right)[ \t]*$", r"\1\2 row \3\n\1\2 side \4"),
    ("@place", r"^([ \t]*)([a-z][\w-]*)[ \t]+(?:(?:at|in)[ \t]+(?:the[ \t]+)?)?(left|right)[ \t,]+(?:and[ \t]+)?(front|rear)[ \t]*$", r"\1\2 row \4\n\1\2 side \3"),
    ("@place", r"\brow[ \t]+back\b", "row rear"),
    ("@place", r"\b(front|middle|rear)[ \t]+row\b", r"row \1"),
    ("@place", r"\bback[ \t]+row\b", "row rear"),
    ("@midi", r"\b(?:ch|chan|midi channel)[ \t]*(?=\d)", "channel "),
    ("@place", rf"\bat[ \t]+({_N})[ \t]*(?:mm)?[ \t]+from[ \t]+(?:the[ \t]+)?left(?:[ \t]+edge)?[ \t,]+(?:and[ \t]+)?({_N}[ \t]*mm)[ \t]+from[ \t]+(?:the[ \t]+)?front(?:[ \t]+edge)?", r"at \1, \2"),
    ("@place", rf"({_N})[ \t]*;[ \t]*({_N})(?=[ \t]*mm)", r"\1, \2"),
    ("@place", rf"({_N})[ \t]*/[ \t]*({_N})(?=[ \t]*mm)", r"\1, \2"),
    ("@place", rf"^([ \t]*[a-z][\w-]*)[ \t]+x[ \t=:]*({_N})(?:[ \t]*mm)?[ \t,]*y[ \t=:]*({_N})", r"\1 at \2, \3"),
    ("@power", r"^([ \t]*)([a-z][\w-]*(?:\.[\w-]+)?)[ \t]+(?:feeds|powers|supplies|drives|to)[ \t]+([a-z][\w, -]*?)(?=[ \t]*$)", r"\1\3 from \2"),
    ("@power", r"^([ \t]*[a-z][\w, -]*?)[ \t]+shares?[ \t]+(?:outlet[ \t]+)?([a-z][\w-]*\.[\w-]+)", r"\1 from \2 shared"),
    ("@power", r"^([ \t]*[a-z][\w-]*)[ \t]*[+&][ \t]*([a-z][\w-]*[ \t]+from[ \t]+[a-z][\w-]*\.[\w-]+)(?=[ \t]*$)", r"\1, \2 shared"),
    ("@place", r"\bturned[ \t]+left\b", "turned 90 deg"),
    ("@place", r"\bturned[ \t]+right\b", "turned 270 deg"),
    ("@place", r"\bturned[ \t]+(?:round|around|back|over)\b", "turned 180 deg"),
    ("@power", r"^([ \t]*)spare[ \t]+([a-z][\w-]*)\.[\w-]+(?=[ \t]*$)", r"\1spare 1 of \2"),
    ("@power", r"^([ \t]*[a-z][\w, -]*?)[ \t]+(?:gets|uses|takes|has)[ \t]+(?:power[ \t]+from[ \t]+)?(?=[a-z][\w-]*\.)", r"\1 from "),
    ("@power @leads @midi @control", r"\b([a-z][\w-]*)[ \t]*\([ \t]*([a-z]+\d*)[ \t]*\)", r"\1.\2"),
    ("@power", r"(?<=from )[ \t]*([a-z][\w-]*)[ \t]+([a-z])[ \t]+(\d+)(?=[ \t]*\Z)", r"\1.\2\3"),
    ("@power @leads @midi @control", r"\b([a-z][\w-]*)[:/]([a-z]+\d*)\b", r"\1.\2"),
    ("@power", r"^([ \t]*[a-z][\w-]*)[ \t]+(?:is[ \t]+)?(?:plugged|plugs|goes|connected|connects|hooked|wired)(?:[ \t]+up)?[ \t]+(?:into|in|to|on)[ \t]+(?=[a-z][\w-]*\.)", r"\1 from "),
    ("@power", r"^([ \t]*[a-z][\w, -]*?)[ \t]+into(?=[ \t])", r"\1 plug into"),
    ("@leads", r"(->[ \t]*[a-z][\w-]*\.[\w-]+)[ \t]+(?!(?:over|under|through|slack|made|premade)\b)([a-z][\w-]*)(?=[ \t]+of\b)", r"\1 \2 to \2"),
    ("@spares", r"^([ \t]*)((?:audio|dc|ac|midi|control)[ \t]+lead[ \t]+.*?)[ \t]*[x×][ \t]*(\d+)(?=[ \t]+in\b|[ \t]*$)", r"\1\3 \2"),
    ("@leads", r"^([ \t]*[A-Z]+\d+[a-z]?[ \t]+)([a-z][\w-]*)[ \t]+([a-z]\w*)[ \t]*(?:->|to\b)[ \t]*([a-z][\w-]*)[ \t]+([a-z]\w*)(?=[ \t]*\Z)", r"\1\2.\3 -> \4.\5"),
    ("@leads", r"\b([a-z][\w-]*\.[\w-]+)[ \t]*<-[ \t]*([a-z][\w-]*\.[\w-]+)", r"\2 -> \1"),
    ("@leads", r"^([ \t]*)(\d+)[ \t:.)]+(?=[a-z][\w-]*\.[\w-]+[ \t]*->)", r"\1A\2 "),
    ("@leads", r"[ \t]+(?:cable|using)[ \t]+(?=[a-z][\w-]*[ \t]*\Z)", " of "),
    ("@leads", r"[ \t]+with[ \t]+(?:two[ \t]+)?([a-z][\w-]*)[ \t]+plugs?(?:[ \t]+at[ \t]+both[ \t]+ends)?(?=[ \t]*\Z)", r" \1 to \1"),
    ("@leads", r"^([ \t]*)([A-Z]+)-(\d+[a-z]?)(?=[ \t])", r"\1\2\3"),
    ("@leads", r"^([ \t]*)(?:lead|cable|patch|cord)[ \t]+(?=[A-Z]+\d+[a-z]?[ \t])", r"\1"),
    ("@mounting", r"^([ \t]*)(?:use|strip)?[ \t]*([a-z][\w-]*)[ \t]+(?:for|on|under)[ \t]+(?:all|everything|every[ \t]+unit)(?=[ \t]*\Z)", r"\1all with \2"),
    ("@mounting", r"\b(?:velcroed|fixed|stuck|held|mounted|taped|fastened)[ \t]+(?=with\b)", ""),
    ("@mounting", r"\b(?:on|by|with)[ \t]+(?=brackets\b)", ""),
    ("@mounting", r"^([ \t]*)strip[ \t]+([a-z][\w-]*)(?=[ \t]*\Z)", r"\1all with \2"),
    ("@mounting", r"^([ \t]*)use[ \t]+([a-z][\w-]*)(?:[ \t]+for[ \t]+(?:all|everything|every[ \t]+unit))?(?=[ \t]*\Z)", r"\1all with \2"),
    ("@spares", r"(?<=\d)x(?=[ \t])", ""),
    ("@spares", r"(?<=[ \t])(plug|lead)s\b", r"\1"),
    ("@spares", r"^([ \t]*\d+)[ \t]+(?:x[ \t]+)?(?!(?:audio|dc|ac|midi|control|plug|plugs|of)\b)([a-z][^\"\n]*?)(?=[ \t]+in[ \t]+\"|[ \t]*$)", r'\1 of "\2"'),
    ("", r"(?<=\d)[ \t]*(m|k|M)[ \t]+(A|V|W|ohm|Hz|m)(?=[ \t]|\Z)", r" \1\2"),
    ("", r"(?<=\d)[ \t]*milli[ \t-]+(?:amp|ampere)s?\b", " mA"),
    ("", r"\b((?:measured|leaflet|assumed)[ \t]+\d{4}-\d\d-\d\d)[ \t,]+([A-Z][^\W\d_]*\.?(?:[ \t]?[A-Z][^\W\d_]*\.?)*)(?=[ \t]*\Z)", r'\1 by "\2"'),
    ("", r"[ \t]*\?(?=[ \t]*\Z)", " assumed"),
    ("", r"(?<![\w.,])(\d{1,3})\.(\d{3}),(\d\d?)(?=[ \t]*[A-Z]{3})", r"\1\2.\3"),
)  # fmt: skip
_RULES = tuple(
    (frozenset(heads.split()), re.compile(shape), made)
    for heads, shape, made in sorted(_WRITTEN, key=lambda rule: not rule[0])  # those of some statements first
)


def _midi(way: str) -> str:
    """The way of a MIDI jack and a name that no other way of it has."""
    return f"{way} {'midi' if way == 'in' else f'midi-{way}'}"


def _kind(typed: str) -> str:
    """The kind of a MIDI jack: of five pins is the DIN one (MIDI 1.0, from memory)."""
    return typed if typed == "mini-trs" else "din"


def _pitch(found: re.Match[str]) -> float:
    """The frequency of a note in equal temperament, from A4."""
    sharp = {"#": 1, "b": -1, "": 0}[found[2]]
    return float(_TO_A * 2 ** ((_SEMITONES[found[1]] + sharp) / 12 + int(found[3]) - 4))


def _hertz(typed: str) -> str:
    return re.sub(r"(?<=\d)[ \t]*(?:/|-|to)[ \t]*(?=\d)", "..", typed)


def _window(found: re.Match[str]) -> str:
    """From where to where `9 V +- 10 %` goes."""
    middle, off = float(found[1]), float(found[2])
    off = middle * off / 100 if found[3] == "%" else off
    return f"{middle - off:.4g}..{middle + off:.4g} V"


def _as_printed(m: Mistake) -> Wording | None:
    """The first rule whose shape lies at the place where reading stopped, or just before it."""
    code = m.code
    head = code.split()[0] if code.split() else ""
    at, near = m.at - m.line_start, len(m.before.rstrip())
    for heads, shape, made in _RULES:
        if (heads and head not in heads and f"@{m.block}" not in heads) or (not heads and head in _LETTERED):
            continue
        for found in shape.finditer(code):
            if not (found.start() <= at and near <= found.end()):
                continue
            text = made(found) if callable(made) else found.expand(made)
            if text == found.group():
                continue
            written = f"{code[: found.start()]}{text}{code[found.end() :]}".rstrip()
            mends = m.instead(m.line_start, m.line_start + len(code.rstrip()), written, f"write {_told(written)}")
            typed = found.group().strip()
            said = f"'{typed}' is not how this is written" if typed else f"'{m.word}' can't stand behind '{head}'"
            return Wording(said, _LABELS.get(head, "these words"), mends=mends)
    return None


def _told(written: str) -> str:
    return " and ".join(f"`{line.strip()}`" for line in written.split("\n")) if "\n" in written else written.strip()


def _and_in_a_list(m: Mistake) -> Wording | None:
    """`amps stack and pa`."""
    if m.word not in ("and", "&", "plus") or not m.awaits(","):
        return None
    start = m.line_start + len(m.before.rstrip())
    mends = m.instead(start, m.at + len(m.word), ",", "write a comma in its place")
    return Wording(f"'{m.word}' stands between two names of a list", "a comma goes here", mends=mends)


def _plural(m: Mistake) -> Wording | None:
    """`amp stack` in a scenario: what there is one of, where several may be listed."""
    word, mine = f"{m.word}s", m.blocks().get(m.block, frozenset())
    if m.before.strip() or not m.block or word not in mine or m.word not in m.blocks().get("", frozenset()):
        return None
    return Wording(f"'{m.word}' begins no statement here", f"did you mean '{word}'?", mends=m.write(word))


def _jacks_in_a_list(m: Mistake) -> Wording | None:
    """`input in, in2 ts`."""
    found = re.match(r"[ \t]*(input|output|inlet|outlet)[ \t]+([a-z][\w-]*)[ \t]*\Z", m.before)
    other = re.match(r"(?:,|/|and\b)[ \t]*([a-z][\w-]*)", m.after)
    if found is None or other is None:
        return None
    names = f"'{found[2]}' and '{other[1]}'"
    listed = re.match(
        r"[a-z]+\d+(?:[ \t]*,[ \t]*[a-z]+\d+)+", m.code[m.at - m.line_start - len(m.before) + found.start(2) :]
    )
    row = [re.fullmatch(r"([a-z]+)(\d+)", each.strip()) for each in listed[0].split(",")] if listed else []
    if (
        row
        and row[0]
        and all(each and each[1] == row[0][1] and int(each[2]) == int(row[0][2]) + at for at, each in enumerate(row))
    ):
        text, start = f"{row[0][0]}..{row[-1][0]}" if row[-1] else "", m.line_start + found.start(2)
        mends = m.instead(start, start + len(listed[0]) if listed else start, text, f"write {found[1]} {text}")
        return Wording(f"{names} stand in one line", "numbered ones are a run", mends=mends)
    return Wording(
        f"{names} stand in one line", "one jack a line", "write a line for each; of numbered ones a run: s1..s8"
    )


def _change_without_cause(m: Mistake) -> Wording | None:
    """`change 1 "the delay moved"`, `change 1 cost "..."`."""
    if not re.match(r"[ \t]*change[ \t]+\d+[ \t]*\Z", m.before):
        return None
    said = f"'{m.word}' is no cause of a change" if m.word[:1].isalpha() else "the cause of this change is missing"
    return Wording(said, "its cause goes here", "write 'design', 'facts', 'stock' or 'rules' before its text")


_POWER = re.compile(rf"(?<![\w.-])({_N})[eE]([+-]?\d{{1,4}})(?![\w.])")
_MOST_DIGITS = 12


def _power_of_ten(m: Mistake) -> Wording | None:
    """`1.5e3 mA`: reading stops in the number, or at what follows it."""
    column = m.at - m.line_start
    found = next((each for each in _POWER.finditer(m.code) if each.start() <= column <= each.end() + 1), None)
    if found is None:
        return None
    message, label = f"'{found[0]}' is written with a power of ten", "the number ends before it"
    if abs(int(found[2])) > _MOST_DIGITS:
        return Wording(message, label, "write the number in full")
    start, whole = m.line_start + found.start(), f"{Decimal(found[0]).normalize():f}"
    return Wording(message, label, mends=m.instead(start, start + len(found[0]), whole, f"write {whole}"))


PRINTED_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _power_of_ten,
    _as_printed,
    _and_in_a_list,
    _plural,
    _jacks_in_a_list,
    _change_without_cause,
)
