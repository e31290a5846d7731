"""Which sheets bear each statement of the language: a table that is proved by changing every statement, part by part."""

from __future__ import annotations

from functools import cache

from rigc.record import Record
from rigc.syntax import nodes


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
        found[statement, names[-1]] = Reach(statement, names[-1], tuple(bears), tuple(follows))
    return found


def sheets_of(word: str) -> tuple[str, ...]:
    """The sheets that bear some part of the statements that begin with this word, in the order of the folder."""
    rules = _rules().get(word, frozenset())
    rows = (row for (statement, _), row in reach().items() if statement.partition("@")[0] in rules)
    return tuple(sorted({sheet for row in rows for sheet in row.bears}))


@cache
def _rules() -> dict[str, frozenset[str]]:
    """The grammar's rules by the word with which their statements begin."""
    found: dict[str, set[str]] = {}
    for name, kind in vars(nodes).items():
        if isinstance(kind, type) and issubclass(kind, nodes.Node) and kind.FORM:
            found.setdefault(kind.FORM.split()[0], set()).add(rule_of(name))
    return {word: frozenset(rules) for word, rules in found.items()}


def rule_of(name: str) -> str:
    """The grammar's rule of a node class by its name: `FootSwitch` is `foot_switch`."""
    return "".join(f"_{letter.lower()}" if letter.isupper() else letter for letter in name).lstrip("_")


NO_FACTS = {
    "language": "says how the file is read",
    "use": "brings in another file, whose statements have rows of their own",
    "sourced": "a fact with its provenance: each of them has its rows",
}
"""Statements that reach no sheet by themselves, and why."""

TABLE = """
accept                 date       | accepted-deviations |
                       reason     | accepted-deviations |
                       seal       | accepted-deviations |
                       stated     | accepted-deviations |
                       who        | accepted-deviations | cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet
accepts                high       | unit-schedule | missing-and-assumed-facts
                       low        | unit-schedule | missing-and-assumed-facts
active                 stated     | loading-table unit-schedule wiring-sheet |
adaptor                kind       | cable-list cut-list deck-drawing label-sheet power-table pull-list test-record wiring-sheet |
                       mark       | cable-list cut-list deck-drawing label-sheet power-table pull-list test-record wiring-sheet |
                       stated     | power-table |
amp                    name       | cable-list ground-sheet label-sheet level-table loading-table mains-sheet signal-flow test-record unit-schedule wiring-sheet | as-built field-notes loop-table midi-and-control-map missing-and-assumed-facts rework
                       title      | unit-schedule |
amps                   stated     | ground-sheet level-table missing-and-assumed-facts |
angle                  amount     | deck-drawing unit-schedule |
at                     stated     | deck-drawing mass-and-balance plan-full-size | as-built cable-list crossing-list cut-list ground-sheet loading-table midi-and-control-map missing-and-assumed-facts mounting-strips overlay power-table pull-list rework spares-list test-record unit-schedule wiring-sheet
                       x          | deck-drawing mass-and-balance plan-full-size | as-built cable-list crossing-list cut-list ground-sheet loading-table mounting-strips overlay power-table pull-list rework wiring-sheet
                       y          | deck-drawing mass-and-balance plan-full-size | as-built cable-list crossing-list cut-list ground-sheet loading-table midi-and-control-map mounting-strips overlay power-table pull-list rework spares-list wiring-sheet
at_panel               stated     | cable-list crossing-list cut-list deck-drawing loading-table mass-and-balance missing-and-assumed-facts pull-list test-record unit-schedule |
band                   countries  | wiring-sheet |
                       high       | wiring-sheet |
                       low        | wiring-sheet |
                       stated     | missing-and-assumed-facts wiring-sheet |
bare_metal             stated     | unit-schedule |
barrel@plug            inner      | cable-list crossing-list cut-list deck-drawing ground-sheet mass-and-balance missing-and-assumed-facts plan-full-size power-table pull-list unit-schedule |
                       outer      | cable-list crossing-list cut-list deck-drawing ground-sheet mass-and-balance missing-and-assumed-facts plan-full-size power-table pull-list unit-schedule |
barrel@supply          inner      | unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size power-table pull-list test-record wiring-sheet
                       outer      | unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size power-table pull-list test-record wiring-sheet
barrel@unit            inner      | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
                       outer      | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
base                   kind       | unit-schedule | missing-and-assumed-facts mounting-strips
battery                capacity   | maintenance power-table unit-schedule | missing-and-assumed-facts
                       kind       | maintenance power-table unit-schedule |
                       stated     | loading-table maintenance missing-and-assumed-facts power-table unit-schedule |
bend                   amount     | deck-drawing unit-schedule |
beside                 gap        | cable-list cut-list deck-drawing mass-and-balance plan-full-size pull-list wiring-sheet |
                       side       | cable-list cut-list deck-drawing mass-and-balance plan-full-size pull-list wiring-sheet |
                       stated     | cable-list cut-list deck-drawing mass-and-balance plan-full-size pull-list wiring-sheet |
blend                  name       | cable-list customs-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size power-table signal-flow test-record unit-schedule wiring-sheet |
blend_dry              share      | level-table test-record wiring-sheet |
blend_wet              share      | level-table test-record wiring-sheet |
                       stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance missing-and-assumed-facts plan-full-size pull-list signal-flow spares-list test-record wiring-sheet |
body                   depth      | deck-drawing mass-and-balance unit-schedule | cable-list crossing-list cut-list ground-sheet loading-table missing-and-assumed-facts mounting-strips overlay plan-full-size power-table pull-list wiring-sheet
                       height     | deck-drawing mass-and-balance unit-schedule | missing-and-assumed-facts
body@supply            width      | deck-drawing mass-and-balance unit-schedule |
body@unit              width      | deck-drawing mass-and-balance plan-full-size unit-schedule | as-built cable-list crossing-list cut-list ground-sheet loading-table missing-and-assumed-facts mounting-strips overlay pull-list rework wiring-sheet
bridged                stated     | mounting-strips pull-list |
                       text       | mounting-strips pull-list |
built_lead             date       | as-built |
                       length     | as-built |
                       stated     | as-built |
                       who        | as-built field-notes history |
bypass                 kind       | signal-flow unit-schedule wiring-sheet | loading-table loop-table missing-and-assumed-facts test-record
bypass_plan            stated     | wiring-sheet |
                       text       | wiring-sheet |
cable                  name       | cable-list unit-schedule | cut-list loading-table missing-and-assumed-facts overlay pull-list rework wiring-sheet
                       title      | unit-schedule |
capacitance            amount     | loading-table unit-schedule wiring-sheet |
captive                length     | cable-list missing-and-assumed-facts power-table spares-list unit-schedule |
case                   name       | deck-drawing mass-and-balance unit-schedule wiring-sheet |
                       title      | unit-schedule |
ceiling                amount     | power-table unit-schedule |
chain                  stated     | cable-list ground-sheet label-sheet level-table loading-table pull-list signal-flow test-record wiring-sheet | crossing-list cut-list deck-drawing loop-table mass-and-balance missing-and-assumed-facts plan-full-size spares-list unit-schedule
change                 cause      | as-built history rework |
                       number     | as-built history rework |
                       reason     | as-built history |
                       stated     | as-built history rework |
                       text       | as-built history rework |
channel                first      | midi-and-control-map preset-sheet wiring-sheet |
                       number     | midi-and-control-map preset-sheet wiring-sheet |
                       stated     | midi-and-control-map missing-and-assumed-facts preset-sheet wiring-sheet |
checked                who        | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
class                  kind       | history |
clearance              amount     | deck-drawing unit-schedule |
client                 code       | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
clock                  kind       | midi-and-control-map unit-schedule |
colour                 code       | unit-schedule | cable-list
                       stated     | unit-schedule | cable-list
conductor              amount     | unit-schedule | power-table
                       strand     | unit-schedule |
conductors             number     | unit-schedule | midi-and-control-map
connector              kind       | power-table unit-schedule |
control_jack           contact    | ground-sheet midi-and-control-map unit-schedule wiring-sheet |
                       jack       | cable-list midi-and-control-map unit-schedule | deck-drawing
control_link           stated     | cable-list deck-drawing ground-sheet label-sheet midi-and-control-map plan-full-size pull-list spares-list test-record wiring-sheet | cut-list mass-and-balance unit-schedule
core                   amount     | mains-sheet unit-schedule |
country                code       | mains-sheet wiring-sheet |
                       stated     | mains-sheet missing-and-assumed-facts wiring-sheet |
cut_in                 amount     | unit-schedule | cable-list cut-list pull-list
cycles                 number     | maintenance unit-schedule |
deck                   name       | deck-drawing mass-and-balance plan-full-size unit-schedule | missing-and-assumed-facts overlay rework wiring-sheet
                       title      | unit-schedule |
deck_feet              inset      | deck-drawing mass-and-balance unit-schedule |
desk                   name       | cable-list ground-sheet label-sheet level-table loading-table mains-sheet signal-flow test-record unit-schedule wiring-sheet | missing-and-assumed-facts
done                   changes    | as-built history |
drawn                  who        | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
draws                  amount     | power-table unit-schedule | mains-sheet maintenance missing-and-assumed-facts
drop                   lines      | deck-drawing plan-full-size unit-schedule | cable-list crossing-list cut-list ground-sheet loading-table mass-and-balance midi-and-control-map overlay pull-list spares-list test-record
earth                  kind       | ground-sheet unit-schedule |
efficiency             amount     | mains-sheet power-table unit-schedule |
every                  number     | maintenance |
                       task       | maintenance |
expected               amount     | test-record |
                       number     | test-record |
                       stated     | test-record |
expression             jack       | cable-list cut-list deck-drawing midi-and-control-map plan-full-size pull-list unit-schedule |
                       track      | midi-and-control-map unit-schedule wiring-sheet |
                       wiper      | midi-and-control-map unit-schedule wiring-sheet |
feed                   how        | cable-list cut-list deck-drawing label-sheet mains-sheet power-table pull-list test-record wiring-sheet |
                       lower      | power-table |
                       stated     | cable-list cut-list label-sheet power-table pull-list test-record wiring-sheet | crossing-list deck-drawing ground-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size spares-list
feet                   kind       | unit-schedule | missing-and-assumed-facts mounting-strips
field_note             date       | field-notes |
                       number     | field-notes |
                       state      | field-notes |
                       text       | field-notes |
                       who        | field-notes history | accepted-deviations as-built cable-list crossing-list customs-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet
fits                   connector  | unit-schedule | as-built cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance midi-and-control-map missing-and-assumed-facts overlay plan-full-size pull-list rework spares-list test-record wiring-sheet
fitted                 text       | unit-schedule |
fixing                 how        | mounting-strips pull-list |
                       stated     | mounting-strips pull-list | mass-and-balance
flag                   words      | unit-schedule | cable-list cut-list deck-drawing ground-sheet loading-table mass-and-balance missing-and-assumed-facts plan-full-size power-table pull-list rework signal-flow test-record wiring-sheet
follows                path       | history overlay rework |
                       stated     | as-built history overlay rework |
foot_switch            action     | unit-schedule |
                       x          | deck-drawing plan-full-size unit-schedule |
                       y          | deck-drawing plan-full-size unit-schedule |
frozen                 date       | history |
                       seal       | history |
                       who        | as-built field-notes history |
gain                   amount     | unit-schedule | ground-sheet level-table test-record
ground                 pole       | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
ground_lift            position   | ground-sheet test-record wiring-sheet |
                       stated     | ground-sheet test-record wiring-sheet |
guitar_lead            length     | unit-schedule | cable-list loading-table rework wiring-sheet
                       stated     | loading-table missing-and-assumed-facts unit-schedule | cable-list label-sheet rework test-record wiring-sheet
heel                   amount     | unit-schedule |
hole                   diameter   | deck-drawing |
                       purpose    | deck-drawing |
                       x          | deck-drawing |
                       y          | deck-drawing |
hop                    link       | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table mass-and-balance missing-and-assumed-facts plan-full-size pull-list signal-flow spares-list test-record wiring-sheet |
impedance              amount     | loading-table unit-schedule |
inductance             amount     | loading-table unit-schedule wiring-sheet |
inlet                  stated     | cable-list cut-list label-sheet missing-and-assumed-facts power-table pull-list test-record unit-schedule wiring-sheet | crossing-list deck-drawing ground-sheet mass-and-balance plan-full-size spares-list
input                  carries    | unit-schedule |
                       impedance  | unit-schedule | loading-table missing-and-assumed-facts rework
input@amp              jack       | unit-schedule | cable-list
input@desk             jack       | unit-schedule |
input@unit             jack       | unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table missing-and-assumed-facts pull-list signal-flow spares-list test-record wiring-sheet
inside                 depth      | deck-drawing unit-schedule |
                       height     | unit-schedule |
                       width      | deck-drawing unit-schedule |
instrument             name       | level-table loading-table signal-flow unit-schedule wiring-sheet | cable-list deck-drawing label-sheet missing-and-assumed-facts rework test-record
                       title      | unit-schedule |
insured                amount     | customs-list |
internal_path          how        | unit-schedule | ground-sheet loading-table
                       stated     | ground-sheet loading-table unit-schedule | level-table missing-and-assumed-facts test-record wiring-sheet
join                   stated     | wiring-sheet |
keep_out               depth      | deck-drawing |
                       text       | deck-drawing |
                       width      | deck-drawing |
                       x          | deck-drawing |
                       y          | deck-drawing |
knob                   name       | unit-schedule | preset-sheet
                       x          | deck-drawing plan-full-size unit-schedule |
                       y          | deck-drawing plan-full-size unit-schedule |
label                  template   | cable-list label-sheet |
latency                amount     | unit-schedule | level-table
lead                   mark       | cable-list cut-list label-sheet | as-built crossing-list deck-drawing field-notes ground-sheet history level-table loading-table loop-table mass-and-balance missing-and-assumed-facts plan-full-size rework signal-flow spares-list test-record wiring-sheet
                       run        | cable-list crossing-list cut-list deck-drawing |
                       stated     | cable-list cut-list label-sheet | crossing-list deck-drawing ground-sheet level-table loading-table loop-table mass-and-balance missing-and-assumed-facts plan-full-size pull-list signal-flow spares-list test-record unit-schedule wiring-sheet
lead_slack             amount     | cable-list cut-list |
leaves                 amount     | unit-schedule | as-built cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance pull-list rework wiring-sheet
level                  maximum    | unit-schedule | level-table missing-and-assumed-facts
                       nominal    | unit-schedule | level-table missing-and-assumed-facts
                       peak       | unit-schedule | level-table missing-and-assumed-facts
                       sensitivity | unit-schedule |
lid                    amount     | deck-drawing unit-schedule |
location               bushing    | unit-schedule | ground-sheet
                       height     | unit-schedule | as-built cable-list cut-list deck-drawing loading-table mass-and-balance missing-and-assumed-facts pull-list rework spares-list wiring-sheet
                       last       | unit-schedule | cable-list crossing-list cut-list deck-drawing power-table
location@supply        offset     | unit-schedule | cable-list crossing-list cut-list deck-drawing mass-and-balance power-table
                       side       | unit-schedule | cable-list crossing-list cut-list deck-drawing mass-and-balance power-table pull-list
location@unit          offset     | unit-schedule | as-built cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table pull-list rework spares-list test-record wiring-sheet
                       side       | unit-schedule | as-built cable-list crossing-list cut-list deck-drawing ground-sheet loading-table mass-and-balance midi-and-control-map overlay plan-full-size power-table pull-list rework spares-list test-record wiring-sheet
loop_empty             stated     | loop-table wiring-sheet |
loop_jacks             first      | loop-table unit-schedule wiring-sheet |
                       mix        | unit-schedule |
lowest_note            amount     | level-table |
made                   length     | cable-list loading-table | mass-and-balance
mains                  hertz_high | mains-sheet | ground-sheet unit-schedule
                       hertz_low  | mains-sheet | ground-sheet unit-schedule
                       high       | mains-sheet unit-schedule |
                       low        | mains-sheet | unit-schedule
                       tolerance  | mains-sheet | unit-schedule
mass@cable             amount     | unit-schedule | mass-and-balance
mass@case              amount     | mass-and-balance unit-schedule |
mass@deck              amount     | mass-and-balance unit-schedule |
mass@panel             amount     | mass-and-balance unit-schedule |
mass@plug              amount     | unit-schedule | mass-and-balance
mass@strip             amount     | mass-and-balance unit-schedule |
mass@supply            amount     | mass-and-balance unit-schedule | customs-list
master                 stated     | midi-and-control-map wiring-sheet |
mating                 kind       | mass-and-balance mounting-strips pull-list unit-schedule |
midi_form              form       | midi-and-control-map unit-schedule |
midi_jack              direction  | midi-and-control-map unit-schedule |
                       jack       | cable-list crossing-list cut-list deck-drawing ground-sheet mass-and-balance midi-and-control-map missing-and-assumed-facts plan-full-size pull-list spares-list unit-schedule |
midi_link              stated     | cable-list cut-list deck-drawing ground-sheet label-sheet mass-and-balance midi-and-control-map plan-full-size preset-sheet pull-list spares-list test-record unit-schedule wiring-sheet |
mount_all              stated     | mass-and-balance missing-and-assumed-facts mounting-strips pull-list | maintenance unit-schedule
needs                  current    | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
                       voltage    | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
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
origin                 code       | customs-list |
                       stated     | customs-list |
others                 stated     | cable-list cut-list label-sheet mains-sheet power-table pull-list test-record wiring-sheet | crossing-list deck-drawing ground-sheet mass-and-balance missing-and-assumed-facts plan-full-size
outer                  amount     | label-sheet unit-schedule | cut-list
outlet                 stated     | power-table unit-schedule |
output                 carries    | unit-schedule |
                       impedance  | unit-schedule | loading-table missing-and-assumed-facts
                       jack       | unit-schedule | cable-list cut-list deck-drawing pull-list spares-list
owner                  text       | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
panel                  name       | cable-list deck-drawing label-sheet level-table loading-table mains-sheet mass-and-balance missing-and-assumed-facts signal-flow test-record unit-schedule wiring-sheet |
                       title      | unit-schedule |
panel_inlet            height     | deck-drawing unit-schedule |
                       x          | deck-drawing unit-schedule |
                       y          | deck-drawing unit-schedule |
panel_jack             bushing    | unit-schedule | ground-sheet
                       height     | deck-drawing unit-schedule |
                       jack       | deck-drawing unit-schedule |
                       x          | deck-drawing unit-schedule | cable-list
                       y          | deck-drawing unit-schedule | cable-list cut-list loading-table mass-and-balance pull-list spares-list
per_length             amount     | loading-table unit-schedule | rework wiring-sheet
plain_lead             length     | loading-table unit-schedule wiring-sheet |
                       stated     | loading-table missing-and-assumed-facts unit-schedule wiring-sheet |
plug                   name       | cable-list unit-schedule | as-built cut-list deck-drawing overlay power-table pull-list rework
                       title      | unit-schedule |
polarity@supply        kind       | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
polarity@unit          kind       | power-table unit-schedule wiring-sheet | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record
poles                  number     | unit-schedule |
power_factor           number     | mains-sheet power-table unit-schedule |
preset                 title      | loading-table preset-sheet wiring-sheet |
preset_loops           loops      | loading-table loop-table preset-sheet wiring-sheet |
                       stated     | loading-table loop-table preset-sheet wiring-sheet |
preset_off             stated     | preset-sheet wiring-sheet |
preset_on              stated     | preset-sheet wiring-sheet |
preset_volume          amount     | preset-sheet wiring-sheet |
                       stated     | preset-sheet wiring-sheet |
price@cable            amount     | unit-schedule | cut-list
price@deck             amount     | unit-schedule |
price@plug             amount     | unit-schedule | cut-list
price@strip            amount     | unit-schedule |
price@unit             amount     | customs-list |
program                number     | preset-sheet wiring-sheet |
                       stated     | midi-and-control-map preset-sheet wiring-sheet |
provenance             date       | unit-schedule |
                       kind       | unit-schedule | cable-list cut-list level-table loading-table maintenance midi-and-control-map missing-and-assumed-facts mounting-strips power-table
                       who        | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
pull                   amount     | mounting-strips unit-schedule |
rail                   front      | deck-drawing mounting-strips |
                       rear       | deck-drawing mounting-strips |
                       tape       | mass-and-balance mounting-strips pull-list |
                       tape_rear  | mass-and-balance mounting-strips pull-list |
rating                 current    | unit-schedule | power-table
                       kind       | unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size power-table pull-list test-record wiring-sheet
                       voltage    | power-table unit-schedule | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet mains-sheet mass-and-balance missing-and-assumed-facts plan-full-size pull-list test-record wiring-sheet
reach                  foot       | cable-list cut-list deck-drawing loading-table mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet |
                       stated     | cable-list cut-list deck-drawing mass-and-balance plan-full-size pull-list wiring-sheet |
reading                amount     | test-record |
                       date       | test-record |
                       number     | test-record |
                       stated     | test-record |
                       who        | accepted-deviations cable-list crossing-list customs-list cut-list deck-drawing field-notes ground-sheet history label-sheet level-table loading-table loop-table mains-sheet maintenance mass-and-balance midi-and-control-map missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow spares-list test-record unit-schedule wiring-sheet |
reserve_room           depth      | deck-drawing |
                       text       | deck-drawing power-table |
                       width      | deck-drawing |
                       x          | deck-drawing |
                       y          | deck-drawing |
resistance             amount     | loading-table unit-schedule |
retired                stated     | cable-list crossing-list cut-list deck-drawing ground-sheet label-sheet level-table loading-table loop-table signal-flow spares-list test-record wiring-sheet |
reversed_feed          stated     | cable-list cut-list label-sheet mains-sheet missing-and-assumed-facts power-table pull-list test-record wiring-sheet |
revision               date       | cable-list crossing-list cut-list deck-drawing ground-sheet history label-sheet level-table loading-table mains-sheet mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow test-record unit-schedule wiring-sheet | accepted-deviations as-built customs-list field-notes loop-table maintenance midi-and-control-map overlay rework spares-list
                       text       | history |
rig                    name       | cable-list crossing-list cut-list deck-drawing ground-sheet history label-sheet level-table loading-table mains-sheet mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow test-record unit-schedule wiring-sheet | accepted-deviations as-built customs-list field-notes loop-table maintenance midi-and-control-map overlay rework spares-list
                       title      | cable-list crossing-list cut-list deck-drawing ground-sheet history label-sheet level-table loading-table mains-sheet mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size power-table preset-sheet pull-list signal-flow test-record unit-schedule wiring-sheet | accepted-deviations as-built customs-list field-notes loop-table maintenance midi-and-control-map overlay rework spares-list
role                   kind       | unit-schedule |
roll                   amount     | mounting-strips unit-schedule |
row                    row        | cable-list cut-list deck-drawing loading-table mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet |
                       stated     | cable-list cut-list deck-drawing loading-table mass-and-balance missing-and-assumed-facts mounting-strips plan-full-size pull-list test-record unit-schedule wiring-sheet |
selector               stated     | test-record wiring-sheet | mains-sheet
                       voltage    | mains-sheet test-record wiring-sheet |
serial                 text       | customs-list mounting-strips unit-schedule |
setting                hour       | preset-sheet |
                       knob       | preset-sheet unit-schedule |
                       stated     | preset-sheet |
size                   depth      | deck-drawing mass-and-balance plan-full-size unit-schedule | cable-list cut-list loading-table missing-and-assumed-facts mounting-strips overlay pull-list rework test-record wiring-sheet
                       width      | deck-drawing mass-and-balance plan-full-size unit-schedule | mounting-strips overlay pull-list
song                   title      | preset-sheet |
spare_lead             bag        | spares-list |
                       length     | pull-list spares-list |
                       number     | pull-list spares-list |
                       signal     | pull-list spares-list |
spare_plug             bag        | spares-list |
                       number     | pull-list spares-list |
                       stated     | pull-list spares-list |
spare_thing            bag        | spares-list |
                       number     | pull-list spares-list |
                       what       | pull-list spares-list |
starts                 amount     | power-table unit-schedule |
stereo_pair            stated     | unit-schedule |
strip                  name       | maintenance mass-and-balance mounting-strips pull-list unit-schedule | missing-and-assumed-facts
                       title      | unit-schedule |
strip_back             core       | cut-list unit-schedule |
                       jacket     | cut-list unit-schedule |
                       screen     | cut-list unit-schedule |
supply                 name       | cable-list deck-drawing label-sheet mains-sheet mass-and-balance missing-and-assumed-facts mounting-strips power-table test-record unit-schedule wiring-sheet | customs-list cut-list ground-sheet
                       title      | unit-schedule | customs-list
swap                   stated     | as-built field-notes |
tall                   amount     | deck-drawing unit-schedule |
technology             kind       | test-record unit-schedule | mains-sheet missing-and-assumed-facts power-table
tempo@preset           amount     | wiring-sheet |
tempo@song             amount     | preset-sheet |
thickness              amount     | deck-drawing mass-and-balance unit-schedule | cable-list cut-list loading-table pull-list wiring-sheet
tie                    stated     | crossing-list |
tier                   front      | deck-drawing |
                       height     | cable-list cut-list deck-drawing loading-table mass-and-balance pull-list spares-list |
                       name       | deck-drawing loop-table unit-schedule wiring-sheet |
                       rear       | deck-drawing |
tone                   capacitor  | loading-table unit-schedule |
                       resistance | loading-table unit-schedule |
                       setting    | loading-table unit-schedule |
track                  amount     | loading-table unit-schedule |
transformer            primary    | mains-sheet |
                       rating     | mains-sheet |
                       secondary  | mains-sheet |
                       stated     | mains-sheet |
treadle                high       | unit-schedule |
                       low        | unit-schedule |
tuning                 text       | preset-sheet |
turned                 angle      | cable-list deck-drawing ground-sheet mass-and-balance plan-full-size |
under                  stated     | cable-list deck-drawing mass-and-balance missing-and-assumed-facts mounting-strips unit-schedule | crossing-list cut-list ground-sheet loading-table midi-and-control-map power-table pull-list spares-list test-record
                       x          | deck-drawing mass-and-balance | cable-list crossing-list cut-list power-table
                       y          | deck-drawing mass-and-balance | cable-list crossing-list cut-list power-table
unit                   title      | unit-schedule | customs-list
unpowered              kind       | unit-schedule wiring-sheet | loading-table missing-and-assumed-facts
usb                    stated     | unit-schedule |
vents                  side       | unit-schedule |
version                text       | unit-schedule |
volume                 amount     | unit-schedule | loading-table
                       setting    | loading-table unit-schedule |
warm                   amount     | unit-schedule |
wide                   amount     | unit-schedule | cable-list deck-drawing mass-and-balance mounting-strips plan-full-size
"""  # fmt: skip
