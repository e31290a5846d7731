"""Which sheets bear each statement of the language: a table that is proved by changing every statement, part by part."""

from __future__ import annotations

from functools import cache

from rigc.record import Record
from rigc.syntax import nodes
from rigc.syntax.nodes.written import opening, rule_of


class Reach(Record):
    """The sheets that bear a part of a statement: they all differ when it is changed; and those that may follow it."""

    statement: str
    part: str
    bears: tuple[str, ...]
    follows: tuple[str, ...]


@cache
def reach() -> dict[tuple[str, str], Reach]:
    """The rows of the table by statement and part."""
    found = {}
    statement = ""
    for line in TABLE.strip().splitlines():
        names, bears, follows = (cell.split() for cell in line.split("|"))
        if len(names) == 2:
            statement = names[0]
        found[statement, names[-1]] = Reach(statement, names[-1], tuple(bears), _followed(bears, follows))
    return found


def _followed(bears: list[str], follows: list[str]) -> tuple[str, ...]:
    """With the sheets that follow whatever changes, and those that follow another sheet."""
    changed = {*bears, *follows}
    behind = (sheet for sheet, leaders in BEHIND.items() if changed & set(leaders))
    return tuple(dict.fromkeys((*follows, *ALWAYS, *behind)))


def sheets_of(word: str) -> tuple[str, ...]:
    """The sheets that bear some part of the statements that begin with this word, in the order of the folder."""
    rules = _rules().get(word, frozenset()) - set(NO_FACTS)
    rows = [row for (statement, _), row in reach().items() if statement.partition("@")[0] in rules]
    if not rows and rules:
        return SCHEDULED
    return tuple(sorted({sheet for row in rows for sheet in row.bears}))


def reached(statement: str, block: str, part: str) -> Reach | None:
    """The row of a part of a statement in a kind of block; None where it has none and other parts of the statement have."""
    rows = reach()
    if not any(name.partition("@")[0] == statement for name, _ in rows):
        return Reach(statement, part, SCHEDULED, _followed(list(SCHEDULED), []))
    return rows.get((f"{statement}@{block}", part)) or rows.get((statement, part))


@cache
def _rules() -> dict[str, frozenset[str]]:
    """The grammar's rules by the word with which their statements begin."""
    found: dict[str, set[str]] = {}
    for kind in vars(nodes).values():
        if isinstance(kind, type) and issubclass(kind, nodes.Node) and kind is not nodes.Node:
            word = opening(kind).partition(" ")[0]
            found.setdefault(word, set()).add(rule_of(kind))
    return {word: frozenset(rules) for word, rules in found.items()}


ALWAYS = ("front-page", "missing-and-assumed-facts", "rework", "overlay")
"""Sheets that tell what checks find and what is in the folder, and how a revision differs from the one before: they may follow any change."""

ZONED = ("label-sheet", "mounting-strips", "power-table", "pull-list", "wiring-sheet")
"""Sheets that tell where on the plan a thing is found: they follow the deck drawing."""

BEHIND = {
    **dict.fromkeys(ZONED, ("deck-drawing",)),
    "customs-list": ("cable-list", "mass-and-balance", "spares-list", "unit-schedule"),
    "spares-list": ("cable-list", "pull-list", "power-table"),
    "as-built": ("cable-list", "history"),
    "crew-card": ("deck-drawing", "wiring-sheet", "mains-sheet", "ground-sheet", "test-record"),
    "build-traveller": (
        "cable-list",
        "cut-list",
        "deck-drawing",
        "label-sheet",
        "mounting-strips",
        "test-record",
        "power-table",
    ),
    "de-rig-list": ("customs-list", "deck-drawing", "test-record", "unit-schedule", "wiring-sheet"),
    "intake-sheet": (
        "customs-list",
        "history",
        "mains-sheet",
        "mass-and-balance",
        "preset-sheet",
        "spares-list",
        "unit-schedule",
        "wiring-sheet",
    ),
    "quote": (
        "cable-list",
        "customs-list",
        "cut-list",
        "deck-drawing",
        "label-sheet",
        "mass-and-balance",
        "mounting-strips",
        "power-table",
        "pull-list",
        "test-record",
        "unit-schedule",
    ),
    "unit-data-sheets": ("deck-drawing", "power-table", "unit-schedule"),
    "fault-tree": (
        "deck-drawing",
        "level-table",
        "loading-table",
        "mains-sheet",
        "wiring-sheet",
        "power-table",
        "cable-list",
        "loop-table",
        "signal-flow",
        "unit-schedule",
    ),
    "stage-hook-up": ("cable-list", "level-table", "wiring-sheet", "mains-sheet", "ground-sheet", "test-record"),
}
"""Sheets that follow when one of these others changes."""

NO_FACTS = {
    "language": "says how the file is read",
    "use": "brings in another file, whose statements have rows of their own",
    "sourced": "a fact with its provenance: each of them has its rows",
    "outlet_connector": "the connector of all outlets: `barrel` and `connector` have the rows",
}
"""Statements that reach no sheet by themselves, and why."""

SCHEDULED = ("unit-schedule",)
"""What a statement bears that has no row: a fact of a thing, which stands on the schedule and nowhere else."""

TABLE = """
accept                 date       | accepted-deviations |
                       reason     | accepted-deviations |
                       seal       | accepted-deviations |
                       stated     | accepted-deviations |
                       who        | accepted-deviations |
active                 stated     | loading-table unit-schedule wiring-sheet |
adaptor                kind       | cable-list cut-list deck-drawing label-sheet power-table pull-list test-record wiring-sheet |
                       mark       | cable-list cut-list deck-drawing label-sheet power-table pull-list test-record wiring-sheet |
                       stated     | power-table |
alone                  stated     | power-table |
amp                    name       | cable-list ground-sheet label-sheet level-table loading-table loop-table mains-sheet midi-and-control-map signal-flow test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
amps                   stated     | ground-sheet level-table mains-sheet |
angle                  amount     | deck-drawing unit-schedule |
at                     stated     | cable-list deck-drawing mass-and-balance mounting-strips plan-full-size | crossing-list cut-list ground-sheet loading-table pull-list
                       x          | cable-list deck-drawing mass-and-balance plan-full-size |
                       y          | cable-list deck-drawing mass-and-balance plan-full-size | crossing-list cut-list ground-sheet loading-table mounting-strips pull-list
at_panel               stated     | cable-list crossing-list cut-list deck-drawing loading-table mass-and-balance pull-list test-record unit-schedule |
away                   distance   | deck-drawing |
                       stated     | deck-drawing |
band                   countries  | wiring-sheet |
                       high       | wiring-sheet |
                       low        | wiring-sheet |
                       stated     | wiring-sheet |
barrel                 inner      | cable-list crossing-list cut-list deck-drawing mass-and-balance power-table pull-list unit-schedule | ground-sheet label-sheet mains-sheet plan-full-size test-record wiring-sheet
                       outer      | cable-list crossing-list cut-list deck-drawing mass-and-balance plan-full-size power-table pull-list unit-schedule | ground-sheet label-sheet mains-sheet test-record wiring-sheet
base                   kind       | unit-schedule | mounting-strips
battery                capacity   | maintenance power-table unit-schedule |
                       kind       | maintenance power-table unit-schedule |
                       stated     | maintenance power-table unit-schedule | crew-card loading-table
bend                   amount     | deck-drawing unit-schedule |
beside                 gap        | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
                       side       | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
                       stated     | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
blend                  name       | cable-list customs-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance mounting-strips plan-full-size power-table signal-flow test-record unit-schedule wiring-sheet |
blend_dry              share      | level-table test-record wiring-sheet |
blend_wet              share      | level-table test-record wiring-sheet |
                       stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance plan-full-size pull-list signal-flow spares-list test-record wiring-sheet |
body                   depth      | deck-drawing mass-and-balance unit-schedule | cable-list mounting-strips plan-full-size pull-list
                       height     | deck-drawing mass-and-balance unit-schedule | cable-list cut-list loading-table pull-list
                       width      | deck-drawing mass-and-balance unit-schedule | mounting-strips plan-full-size
bridged                stated     | mounting-strips pull-list |
                       text       | mounting-strips pull-list |
built_lead             date       | as-built |
                       length     | as-built |
                       stated     | as-built |
                       who        | as-built |
bypass                 kind       | signal-flow unit-schedule wiring-sheet | loading-table test-record
bypass_plan            stated     | wiring-sheet |
                       text       | wiring-sheet |
cable                  name       | cable-list unit-schedule |
                       title      | unit-schedule |
capacitance            amount     | loading-table unit-schedule wiring-sheet |
captive                length     | unit-schedule | cable-list power-table wiring-sheet
case                   name       | customs-list deck-drawing mass-and-balance unit-schedule wiring-sheet |
                       title      | customs-list unit-schedule |
ceiling                amount     | power-table unit-schedule |
chain                  stated     | cable-list ground-sheet label-sheet level-table loading-table pull-list signal-flow test-record wiring-sheet | crossing-list cut-list deck-drawing loop-table mass-and-balance plan-full-size unit-schedule
change                 cause      | as-built history |
                       reason     | as-built history |
                       stated     | as-built history | cable-list power-table wiring-sheet
                       text       | as-built history |
channel                first      | midi-and-control-map preset-sheet wiring-sheet |
                       number     | midi-and-control-map preset-sheet wiring-sheet |
                       stated     | midi-and-control-map preset-sheet wiring-sheet | test-record
checked                who        | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
class                  kind       | history spares-list |
clear                  distance   | deck-drawing |
                       stated     | deck-drawing |
clearance              amount     | deck-drawing unit-schedule |
client                 code       | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
clock                  kind       | midi-and-control-map unit-schedule |
connector              kind       | power-table unit-schedule |
control_jack           contact    | ground-sheet midi-and-control-map unit-data-sheets wiring-sheet | unit-schedule
                       jack       | cable-list midi-and-control-map unit-data-sheets | deck-drawing unit-schedule
control_link           stated     | cable-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance midi-and-control-map plan-full-size pull-list spares-list test-record unit-schedule wiring-sheet |
cord                   length     | mains-sheet |
core                   amount     | mains-sheet unit-schedule |
country                code       | mains-sheet wiring-sheet |
                       stated     | mains-sheet wiring-sheet |
cut_in                 amount     | cable-list cut-list pull-list unit-schedule |
cutting                how        | cable-list cut-list loading-table mass-and-balance pull-list test-record unit-schedule |
                       signal     | unit-schedule |
cycles                 number     | maintenance unit-schedule |
deck                   name       | customs-list deck-drawing mass-and-balance plan-full-size unit-schedule wiring-sheet |
                       title      | customs-list unit-schedule |
deck_feet              inset      | deck-drawing mass-and-balance plan-full-size unit-schedule |
desk                   name       | cable-list ground-sheet label-sheet level-table loading-table mains-sheet signal-flow test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
done                   changes    | as-built history |
drawn                  who        | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
draws                  amount     | mains-sheet power-table unit-schedule |
draws@instrument       amount     | power-table unit-schedule | maintenance
draws@sound_source     amount     | power-table unit-schedule | maintenance
drop                   lines      | cable-list deck-drawing plan-full-size unit-schedule | crossing-list cut-list ground-sheet loading-table mass-and-balance pull-list test-record
earth                  kind       | ground-sheet unit-schedule | power-table
efficiency             amount     | mains-sheet power-table unit-schedule |
every                  number     | maintenance |
                       task       | maintenance |
expected               amount     | test-record |
                       number     | test-record |
                       stated     | test-record |
expression             jack       | cable-list cut-list deck-drawing mass-and-balance midi-and-control-map plan-full-size pull-list unit-data-sheets | unit-schedule
                       taper      | midi-and-control-map unit-data-sheets | unit-schedule
                       track      | midi-and-control-map unit-data-sheets wiring-sheet | unit-schedule
                       wiper      | midi-and-control-map unit-data-sheets wiring-sheet | unit-schedule
feed                   how        | cable-list cut-list deck-drawing label-sheet mains-sheet power-table pull-list test-record wiring-sheet |
                       lower      | cable-list cut-list label-sheet power-table pull-list test-record wiring-sheet |
                       stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet power-table pull-list spares-list test-record wiring-sheet |
                       voltage    | cable-list label-sheet mains-sheet power-table test-record wiring-sheet |
feedback               stated     | wiring-sheet |
                       text       | wiring-sheet |
feet                   kind       | unit-schedule | mounting-strips
field_note             date       | field-notes |
                       number     | field-notes |
                       state      | field-notes |
                       text       | field-notes |
                       who        | field-notes |
firmware               text       | midi-and-control-map unit-schedule |
fits                   connector  | cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance plan-full-size pull-list spares-list test-record unit-schedule |
fixing                 how        | deck-drawing mounting-strips pull-list |
                       stated     | mass-and-balance mounting-strips pull-list | deck-drawing
flag                   words      | unit-schedule | loading-table test-record
follows                letter     | as-built cable-list history wiring-sheet | deck-drawing
                       path       | cable-list history wiring-sheet | deck-drawing
                       stated     | as-built cable-list history wiring-sheet | deck-drawing
foot_switch            action     | unit-schedule |
                       x          | deck-drawing plan-full-size unit-schedule |
                       y          | deck-drawing plan-full-size unit-schedule |
frozen                 date       | history |
                       seal       | history |
                       who        | history |
fuse                   kind       | mains-sheet maintenance power-table | test-record wiring-sheet
                       marked     | mains-sheet maintenance power-table | test-record wiring-sheet
                       rating     | mains-sheet maintenance power-table | test-record wiring-sheet
                       stated     | mains-sheet maintenance power-table | test-record wiring-sheet
                       voltage    | mains-sheet maintenance power-table | test-record wiring-sheet
fuse@sound_source      kind       | mains-sheet maintenance | test-record wiring-sheet
                       marked     | mains-sheet maintenance | test-record wiring-sheet
                       rating     | mains-sheet maintenance | test-record wiring-sheet
                       stated     | mains-sheet maintenance | test-record wiring-sheet
                       voltage    | mains-sheet maintenance | test-record wiring-sheet
fuse@mains_strip       kind       | mains-sheet maintenance | test-record wiring-sheet
                       marked     | mains-sheet maintenance | test-record wiring-sheet
                       rating     | mains-sheet maintenance | test-record wiring-sheet
                       stated     | mains-sheet maintenance | test-record wiring-sheet
                       voltage    | mains-sheet maintenance | test-record wiring-sheet
fuse_size              across     | mains-sheet maintenance power-table | test-record wiring-sheet
                       length     | mains-sheet maintenance power-table | test-record wiring-sheet
fuse_size@sound_source across     | mains-sheet maintenance | test-record wiring-sheet
                       length     | mains-sheet maintenance | test-record wiring-sheet
fuse_size@mains_strip  across     | mains-sheet maintenance | test-record wiring-sheet
                       length     | mains-sheet maintenance | test-record wiring-sheet
gain                   amount     | unit-schedule | test-record
ground                 pole       | power-table unit-schedule |
ground_lift            position   | ground-sheet test-record wiring-sheet |
                       stated     | ground-sheet test-record wiring-sheet |
guitar_lead            length     | loading-table unit-schedule | cable-list wiring-sheet
                       stated     | loading-table unit-schedule | cable-list test-record wiring-sheet
headphones             stated     | ground-sheet mains-sheet unit-schedule |
hole                   diameter   | deck-drawing plan-full-size |
                       purpose    | deck-drawing |
                       x          | deck-drawing plan-full-size |
                       y          | deck-drawing plan-full-size |
hop                    link       | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance plan-full-size pull-list signal-flow spares-list test-record wiring-sheet |
impedance              amount     | loading-table unit-data-sheets | unit-schedule
inductance             amount     | loading-table unit-schedule wiring-sheet |
inlet                  stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance plan-full-size power-table pull-list spares-list test-record unit-schedule wiring-sheet |
input                  carries    | unit-data-sheets | test-record unit-schedule
                       impedance  | loading-table unit-schedule |
input@amp              jack       | cable-list unit-data-sheets | test-record unit-schedule
input@desk             jack       | test-record unit-data-sheets | fault-tree loading-table unit-schedule wiring-sheet
input@listener         jack       | unit-data-sheets | test-record unit-schedule
input@unit             jack       | unit-data-sheets | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table power-table pull-list signal-flow test-record wiring-sheet unit-schedule
inside                 depth      | deck-drawing unit-schedule |
                       height     | unit-schedule |
                       width      | deck-drawing unit-schedule |
instrument             name       | level-table loading-table signal-flow unit-schedule wiring-sheet |
                       title      | unit-schedule |
insured                amount     | customs-list |
internal_path          how        | ground-sheet loading-table unit-schedule | level-table test-record
                       stated     | level-table loading-table unit-schedule wiring-sheet | ground-sheet test-record
jack_lift              position   | ground-sheet test-record unit-data-sheets wiring-sheet | power-table unit-schedule
jacks_look             side       | deck-drawing |
                       stated     | deck-drawing |
join                   stated     | cable-list wiring-sheet |
keep_out               depth      | deck-drawing |
                       text       | deck-drawing |
                       width      | deck-drawing |
                       x          | deck-drawing |
                       y          | deck-drawing |
knob                   name       | unit-schedule |
                       x          | deck-drawing plan-full-size unit-schedule |
                       y          | deck-drawing plan-full-size unit-schedule |
knobs_free             stated     | deck-drawing |
label                  template   | cable-list label-sheet | power-table
lane                   signal     | cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance pull-list spares-list test-record unit-schedule | power-table
                       y          | cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance pull-list spares-list test-record unit-schedule |
lead                   mark       | cable-list label-sheet test-record wiring-sheet | crossing-list cut-list deck-drawing field-notes ground-sheet level-table loading-table loop-table plan-full-size power-table signal-flow
                       run        | cable-list crossing-list cut-list deck-drawing | plan-full-size
                       stated     | cable-list deck-drawing label-sheet loading-table plan-full-size test-record | crossing-list cut-list ground-sheet level-table loop-table mass-and-balance power-table pull-list signal-flow wiring-sheet
lead_slack             amount     | cable-list cut-list |
lead_through           lines      | cable-list cut-list deck-drawing | crossing-list loading-table mass-and-balance plan-full-size pull-list test-record
leaves                 amount     | cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance pull-list unit-schedule | plan-full-size
level                  maximum    | unit-data-sheets | level-table unit-schedule
                       nominal    | unit-data-sheets | level-table unit-schedule
                       peak       | unit-data-sheets | level-table unit-schedule
                       sensitivity | unit-data-sheets | unit-schedule
lid                    amount     | deck-drawing unit-schedule |
limit                  amount     | history |
                       source     | history |
                       what       | history |
listener               name       | cable-list ground-sheet label-sheet level-table loading-table signal-flow test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
location               bushing    | unit-data-sheets | unit-schedule
                       height     | unit-data-sheets | cable-list cut-list deck-drawing loading-table mass-and-balance pull-list unit-schedule
                       last       | unit-data-sheets | cable-list crossing-list cut-list deck-drawing power-table unit-schedule
                       offset     | deck-drawing unit-data-sheets | cable-list crossing-list cut-list ground-sheet mass-and-balance midi-and-control-map plan-full-size power-table pull-list unit-schedule
                       side       | deck-drawing unit-data-sheets | cable-list crossing-list cut-list ground-sheet loading-table mass-and-balance midi-and-control-map plan-full-size power-table pull-list unit-schedule
loop_empty             number     | loop-table | wiring-sheet
                       stated     | loop-table | wiring-sheet
loop_holds             number     | cable-list label-sheet level-table loop-table signal-flow test-record wiring-sheet |
                       stated     | cable-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance mounting-strips plan-full-size pull-list signal-flow test-record unit-schedule wiring-sheet | cut-list
loop_jacks             first      | loop-table unit-data-sheets | unit-schedule wiring-sheet
                       mix        | unit-data-sheets | unit-schedule
lowest_note            amount     | level-table |
made                   how        | cable-list cut-list pull-list |
                       length     | cable-list loading-table | mass-and-balance
                       revision   | cable-list |
mains                  hertz_high | mains-sheet | ground-sheet unit-schedule test-record wiring-sheet
                       hertz_low  | mains-sheet | ground-sheet unit-schedule test-record wiring-sheet
                       high       | mains-sheet unit-schedule | test-record wiring-sheet
                       low        | mains-sheet | unit-schedule test-record wiring-sheet
                       tolerance  | mains-sheet | unit-schedule test-record wiring-sheet
mains_strip            name       | deck-drawing mains-sheet maintenance mass-and-balance mounting-strips test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
marker                 characters | label-sheet |
mass                   amount     | unit-schedule | customs-list mains-sheet mass-and-balance mounting-strips
master                 stated     | midi-and-control-map wiring-sheet |
mating                 kind       | mass-and-balance mounting-strips pull-list unit-schedule | deck-drawing
may_share              stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance plan-full-size power-table pull-list test-record wiring-sheet |
midi_form              form       | cable-list cut-list label-sheet midi-and-control-map pull-list unit-data-sheets wiring-sheet | unit-schedule
midi_jack              direction  | unit-data-sheets | midi-and-control-map unit-schedule
                       jack       | cable-list cut-list deck-drawing ground-sheet mass-and-balance midi-and-control-map plan-full-size pull-list test-record unit-data-sheets | spares-list unit-schedule
midi_link              stated     | cable-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance midi-and-control-map plan-full-size power-table preset-sheet pull-list test-record unit-schedule wiring-sheet | spares-list
minus_earthed          stated     | ground-sheet | power-table
mount                  stated     | maintenance mass-and-balance mounting-strips pull-list unit-schedule |
mount_all              stated     | mass-and-balance mounting-strips pull-list | deck-drawing unit-schedule
mute                   how        | wiring-sheet |
                       stated     | test-record wiring-sheet |
near_edge              edge       | deck-drawing |
                       stated     | deck-drawing |
needs                  current    | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance plan-full-size pull-list test-record wiring-sheet
                       voltage    | power-table unit-schedule |
no_tape                depth      | unit-schedule |
                       what       | mounting-strips unit-schedule |
                       width      | unit-schedule |
                       x          | unit-schedule |
                       y          | unit-schedule |
note@                  text       | wiring-sheet |
note@as_built          text       | as-built wiring-sheet |
note@blend             text       | wiring-sheet |
note@case              text       | wiring-sheet |
note@control_block     text       | wiring-sheet |
note@deck              text       | wiring-sheet |
note@instrument        text       | wiring-sheet |
note@leads_block       text       | wiring-sheet |
note@midi_block        text       | wiring-sheet |
note@mounting_block    text       | wiring-sheet |
note@panel             text       | wiring-sheet |
note@place_block       text       | wiring-sheet |
note@power_block       text       | wiring-sheet |
note@preset            text       | preset-sheet wiring-sheet |
note@rig               text       | wiring-sheet |
note@scenario          text       | wiring-sheet |
note@song              text       | preset-sheet |
note@spares_block      text       | wiring-sheet |
note@tests_block       text       | wiring-sheet |
note@unit              text       | wiring-sheet |
off_board              stated     | cable-list cut-list deck-drawing loading-table mass-and-balance plan-full-size stage-hook-up unit-schedule | crossing-list ground-sheet label-sheet mounting-strips power-table pull-list test-record wiring-sheet
                       where      | stage-hook-up unit-schedule |
on_side                side       | deck-drawing |
                       stated     | deck-drawing |
order                  stated     | wiring-sheet |
                       text       | wiring-sheet |
origin                 code       | customs-list |
                       stated     | customs-list |
others                 stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance plan-full-size power-table pull-list test-record wiring-sheet |
outer                  amount     | label-sheet unit-schedule |
outlet                 stated     | power-table unit-schedule | deck-drawing
output                 carries    | unit-data-sheets | test-record unit-schedule
                       impedance  | unit-schedule | loading-table
                       jack       | unit-data-sheets | test-record unit-schedule
owner                  text       | customs-list unit-schedule |
pack                   capacity   | maintenance power-table unit-schedule | customs-list
                       cells      | maintenance power-table unit-schedule | customs-list
                       kind       | maintenance power-table unit-schedule | customs-list spares-list
                       stated     | mains-sheet maintenance power-table test-record unit-schedule | crew-card customs-list fault-tree
panel                  name       | cable-list deck-drawing label-sheet level-table loading-table mains-sheet mass-and-balance signal-flow test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
panel_inlet            height     | deck-drawing unit-data-sheets | unit-schedule
                       x          | deck-drawing plan-full-size unit-data-sheets | unit-schedule
                       y          | deck-drawing plan-full-size unit-data-sheets | unit-schedule
panel_jack             bushing    | ground-sheet unit-data-sheets | unit-schedule
                       carries    | unit-data-sheets | unit-schedule
                       height     | deck-drawing unit-data-sheets | unit-schedule
                       jack       | deck-drawing unit-data-sheets | unit-schedule
                       x          | cable-list deck-drawing plan-full-size unit-data-sheets | unit-schedule
                       y          | cable-list cut-list deck-drawing loading-table mass-and-balance plan-full-size pull-list spares-list unit-data-sheets | unit-schedule
per_length             amount     | loading-table unit-schedule | wiring-sheet
phantom                how        | unit-data-sheets | wiring-sheet unit-schedule
                       voltage    | unit-data-sheets wiring-sheet | unit-schedule
plain_lead             length     | loading-table stage-hook-up unit-schedule wiring-sheet |
                       stated     | loading-table stage-hook-up unit-schedule wiring-sheet |
plug                   name       | cable-list cut-list power-table unit-schedule |
                       title      | unit-schedule |
plug_top               pins       | mains-sheet unit-schedule |
                       stated     | mains-sheet test-record unit-schedule |
plugged                stated     | mains-sheet wiring-sheet |
polarity               kind       | power-table unit-schedule wiring-sheet | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance plan-full-size pull-list test-record
power_factor           number     | mains-sheet power-table unit-schedule |
premade                lengths    | cable-list cut-list mass-and-balance power-table pull-list spares-list unit-schedule |
                       masses     | cable-list cut-list mass-and-balance unit-schedule |
                       prices     | cable-list cut-list unit-schedule |
                       signal     | cable-list cut-list mass-and-balance power-table pull-list unit-schedule |
preset                 number     | loading-table loop-table midi-and-control-map preset-sheet wiring-sheet |
                       title      | loading-table preset-sheet wiring-sheet |
preset_line            position   | preset-sheet wiring-sheet |
                       stated     | preset-sheet wiring-sheet |
                       text       | preset-sheet wiring-sheet |
preset_loops           loops      | loading-table loop-table preset-sheet wiring-sheet |
                       stated     | loading-table loop-table preset-sheet wiring-sheet |
preset_off             stated     | preset-sheet wiring-sheet |
preset_on              stated     | preset-sheet wiring-sheet |
preset_volume          amount     | preset-sheet wiring-sheet |
                       stated     | preset-sheet wiring-sheet |
price@cable            amount     | unit-schedule |
price@deck             amount     | customs-list unit-schedule |
price@plug             amount     | cut-list unit-schedule |
price@strip            amount     | unit-schedule |
price@unit             amount     | customs-list |
program                number     | preset-sheet wiring-sheet |
                       stated     | midi-and-control-map preset-sheet wiring-sheet |
pull                   amount     | mounting-strips unit-schedule |
rail                   faces      | mounting-strips pull-list | mass-and-balance
                       front      | deck-drawing mounting-strips | mass-and-balance
                       rear       | deck-drawing mounting-strips | mass-and-balance
                       stated     | deck-drawing mass-and-balance mounting-strips pull-list |
                       strip      | mass-and-balance mounting-strips pull-list |
                       tape       | mass-and-balance mounting-strips pull-list |
                       tape_rear  | mass-and-balance mounting-strips pull-list |
rating                 current    | power-table unit-schedule |
                       kind       | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance plan-full-size power-table pull-list spares-list test-record unit-schedule wiring-sheet |
                       voltage    | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance plan-full-size power-table pull-list test-record unit-schedule wiring-sheet |
reach                  foot       | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
                       stated     | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
reading                amount     | test-record |
                       date       | test-record |
                       number     | test-record |
                       stated     | test-record |
                       who        | test-record |
reserve_outlet         current    | power-table |
                       kind       | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance power-table pull-list test-record wiring-sheet |
                       text       | power-table |
                       voltage    | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance power-table pull-list test-record wiring-sheet |
reserve_room           depth      | deck-drawing |
                       text       | deck-drawing |
                       width      | deck-drawing |
resistance             amount     | loading-table unit-schedule |
retired                stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table power-table signal-flow spares-list test-record wiring-sheet |
reversed_feed          stated     | cable-list cut-list label-sheet power-table pull-list test-record wiring-sheet | deck-drawing mains-sheet maintenance
revision               date       | cable-list crossing-list cut-list deck-drawing ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet | accepted-deviations customs-list field-notes midi-and-control-map
                       text       | history |
rig                    name       | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
                       title      | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
roll                   amount     | mounting-strips unit-schedule |
room_at                x          | deck-drawing |
                       y          | deck-drawing |
row                    row        | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
                       stated     | deck-drawing | cable-list crossing-list cut-list ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet
scenario               name       | ground-sheet mains-sheet test-record wiring-sheet | level-table loading-table signal-flow
                       title      | mains-sheet |
selector               stated     | mains-sheet test-record wiring-sheet |
                       voltage    | mains-sheet test-record wiring-sheet |
serial                 text       | unit-schedule | customs-list mounting-strips
setting                hour       | preset-sheet |
                       knob       | preset-sheet unit-schedule |
                       stated     | preset-sheet |
show_length            amount     | maintenance power-table | intake-sheet
size                   depth      | deck-drawing mass-and-balance plan-full-size unit-schedule |
                       width      | deck-drawing mass-and-balance mounting-strips plan-full-size pull-list unit-schedule |
sockets                count      | mains-sheet |
song                   title      | preset-sheet |
song_preset            number     | preset-sheet |
sound_source           name       | cable-list ground-sheet label-sheet level-table loading-table mains-sheet maintenance signal-flow test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
source_kind            kind       | unit-schedule | wiring-sheet
spare_lead             bag        | spares-list |
                       length     | pull-list spares-list |
                       number     | pull-list spares-list |
                       signal     | pull-list spares-list |
spare_outlets          number     | power-table |
                       stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance power-table pull-list test-record wiring-sheet |
spare_plug             bag        | spares-list |
                       number     | pull-list spares-list |
                       stated     | pull-list spares-list |
spare_thing            bag        | spares-list |
                       number     | pull-list spares-list |
                       what       | pull-list spares-list |
spare_unit             bag        | spares-list |
                       stated     | pull-list spares-list unit-schedule |
stands                 how        | deck-drawing |
                       stated     | deck-drawing |
stands_in              stated     | as-built build-traveller cable-list crew-card deck-drawing field-notes ground-sheet label-sheet level-table loading-table signal-flow stage-hook-up test-record unit-schedule wiring-sheet |
stands_out             amount     | deck-drawing plan-full-size unit-schedule |
starts                 amount     | power-table unit-schedule |
stepped                stated     | deck-drawing |
stereo_pair            stated     | unit-data-sheets | unit-schedule
stock_choice           signal     | cable-list cut-list label-sheet mass-and-balance pull-list unit-schedule | midi-and-control-map wiring-sheet
                       stated     | cable-list cut-list label-sheet mass-and-balance pull-list unit-schedule |
strip                  name       | maintenance mass-and-balance mounting-strips pull-list unit-schedule |
                       title      | unit-schedule |
strip_back             core       | cut-list unit-schedule |
                       jacket     | cut-list unit-schedule |
                       screen     | cut-list unit-schedule |
supply                 name       | cable-list customs-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance mounting-strips power-table test-record unit-schedule wiring-sheet |
                       title      | customs-list unit-schedule |
swap                   stated     | as-built field-notes |
symmetric              stated     | deck-drawing |
takes                  amount     | mains-sheet unit-schedule |
tall                   amount     | deck-drawing unit-schedule |
technology             kind       | test-record unit-schedule | mains-sheet power-table
tempo@preset           amount     | wiring-sheet |
tempo@song             amount     | preset-sheet |
thickness              amount     | cable-list cut-list deck-drawing mass-and-balance midi-and-control-map pull-list unit-schedule | loading-table spares-list
tie                    stated     | crossing-list |
tier                   front      | deck-drawing |
                       height     | cable-list cut-list deck-drawing loading-table mass-and-balance midi-and-control-map pull-list spares-list |
                       name       | deck-drawing loop-table unit-data-sheets | unit-schedule wiring-sheet
                       rear       | deck-drawing |
together               stated     | deck-drawing |
tone                   capacitor  | loading-table unit-schedule |
                       resistance | loading-table unit-schedule |
                       setting    | loading-table unit-schedule |
track                  amount     | loading-table unit-schedule |
transformer            primary    | mains-sheet test-record wiring-sheet |
                       rating     | mains-sheet test-record wiring-sheet |
                       secondary  | mains-sheet test-record wiring-sheet |
                       stated     | mains-sheet test-record wiring-sheet |
tuning                 text       | preset-sheet |
turned                 angle      | cable-list deck-drawing ground-sheet mass-and-balance plan-full-size |
under                  jacks      | deck-drawing |
                       stated     | cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance mounting-strips power-table pull-list spares-list test-record unit-schedule | plan-full-size
                       x          | cable-list crossing-list cut-list deck-drawing mass-and-balance power-table |
                       y          | cable-list crossing-list cut-list deck-drawing mass-and-balance power-table pull-list |
unit                   name       | cable-list deck-drawing ground-sheet label-sheet level-table loading-table mass-and-balance mounting-strips plan-full-size power-table signal-flow test-record unit-schedule wiring-sheet | customs-list preset-sheet
                       title      | unit-schedule | customs-list
unpowered              kind       | loading-table unit-schedule wiring-sheet |
usb                    stated     | unit-data-sheets | deck-drawing unit-schedule
volume                 amount     | loading-table unit-schedule |
                       setting    | loading-table unit-schedule |
was                    stated     | cable-list label-sheet level-table loading-table signal-flow test-record unit-schedule wiring-sheet | deck-drawing
weigh                  what       | deck-drawing |
                       share      | deck-drawing |
wide                   amount     | unit-schedule | deck-drawing mounting-strips plan-full-size
work_rate              amount     | quote |
"""  # fmt: skip
