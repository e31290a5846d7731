"""Rig -> its audio graph, all scenarios and instruments together."""

from __future__ import annotations

from rigc.model.graphs import SignalGraph, signal_graph
from rigc.model.rig import Rig


def audio_graph(rig: Rig) -> SignalGraph:
    """The ways of sound that hold at any time."""
    return signal_graph(rig)


COMPUTE = audio_graph
