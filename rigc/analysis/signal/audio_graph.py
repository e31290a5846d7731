"""Rig -> its audio graph, all scenarios and instruments together."""

from __future__ import annotations

from rigc.model.graphs import SignalGraph, signal_graph
from rigc.model.rig import Rig


class AudioGraph(SignalGraph):
    """The ways of sound that hold at any time."""


def audio_graph(rig: Rig) -> AudioGraph:
    """Of the whole rig."""
    graph = signal_graph(rig)
    return AudioGraph(graph.ways, graph.onward)


COMPUTE = audio_graph
