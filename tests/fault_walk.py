"""What is heard on a rig with one thing broken and a lead patched: reckoned anew with networkx, edge by edge, for tests of the fault tree."""

from __future__ import annotations

import networkx

from rigc.analysis.faults.fault_tree import Culprits, FaultTree, Symptom
from rigc.analysis.faults.hearing import LoopsOut, Patch
from rigc.analysis.faults.single_breaks import Break
from rigc.analysis.results import Results
from rigc.analysis.signal.sound_ways import stereo_ways
from rigc.model.jacks import Port


class Bench:
    """One hookup on the bench: `heard` plugs everything together anew for each question."""

    def __init__(self, results: Results, tree: FaultTree) -> None:
        self.rig, self.tree, self.hookup = results.rig, tree, tree.hookup

    def heard(self, broken: Break, out: LoopsOut | None = None, patches: tuple[Patch, ...] = ()) -> frozenset[Port]:
        """The ends at which an instrument is heard."""
        graph = networkx.DiGraph()
        starts, ends = (
            {patch.start for patch in patches},
            {port for patch in patches for port in (patch.end, patch.alone)},
        )
        for lead in self.hookup.leads:
            mark = self.tree.marks.get((lead.start, lead.end))
            part = ("radio", str(lead.end)) if mark is None else ("lead", mark)
            if part not in broken.gone and lead.start not in starts and lead.end not in ends:
                graph.add_edge(lead.start, lead.end)
        for patch in patches:
            graph.add_edge(patch.start, patch.end)
        for start, end in self._inside(out, patches):
            if ("thing", start.thing) not in broken.gone:
                graph.add_edge(start, end)
        played = [port for port in self.hookup.sources if ("thing", port.thing) not in broken.gone]
        reached = {end for port in played if port in graph for end in networkx.descendants(graph, port)}
        return frozenset(end for end in self.tree.ends if end in reached and ("thing", end.thing) not in broken.gone)

    def _inside(self, out: LoopsOut | None, patches: tuple[Patch, ...]) -> list[tuple[Port, Port]]:
        """A switcher's way is what is left of it: in, each loop that is in by its number, out."""
        emptied = {patch.alone for patch in patches if patch.alone is not None}
        ways = [way for way in self.hookup.inner if out is None or way[0].thing != out.switcher]
        for name in {port.thing for port in emptied}:
            ways = [way for way in ways if way[0].thing != name]
            ways += stereo_ways(self.rig, self.rig.units[name], self.hookup.wired - emptied)
        if out is None:
            return ways
        unit = self.rig.units[out.switcher]
        sends, backs = {loop.send for loop in unit.loops}, {loop.back for loop in unit.loops}
        outside = {way[0] for way in self.hookup.inner if way[0].thing == unit.name and way[0].jack not in backs}
        exits = {way[1] for way in self.hookup.inner if way[1].thing == unit.name and way[1].jack not in sends}
        here = outside
        for loop in sorted(unit.loops, key=lambda each: each.number):
            send, back = Port(unit.name, loop.send), Port(unit.name, loop.back)
            if loop.number not in out.numbers and {send, back} & self.hookup.wired:
                ways += [(start, send) for start in here]
                here = {back}
        return [*ways, *((start, end) for start in here for end in exits)]

    def walk(self, broken: Break) -> tuple[Symptom | None, Culprits | None, int]:
        """The symptom with which it begins, where the lines lead, after how many questions; nothing if all ends sound."""
        heard = self.heard(broken)
        silent = tuple(end for end in self.tree.ends if end not in heard)
        if not silent:
            return None, None, 0
        (symptom,) = (each for each in self.tree.symptoms if each.silent == silent)
        if symptom.only is not None:
            return symptom, symptom.only, 0
        here: int | Culprits = 0
        asked = 0
        while isinstance(here, int):
            line = symptom.lines[here]
            question = line.question
            patches = () if question.patch is None else (question.patch,)
            asked += 1
            here = line.heard if question.end in self.heard(broken, question.out, patches) else line.silent
        return symptom, here, asked
