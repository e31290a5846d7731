"""A rig -> what each term of the objective for places weighs in it, in percent of a millimetre of audio lead."""

from __future__ import annotations

from rigc.facts import laying
from rigc.facts.fact import Fact
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.model.stock import Cable

TERMS: dict[str, Fact] = {
    "audio leads": laying.AUDIO_SHARE,
    "other leads": laying.OTHER_SHARE,
    "onward": laying.BACKWARDS_SHARE,
    "bare deck": laying.TRODDEN_SHARE,
    "stamped": laying.STAMPED_SHARE,
    "beside treadle": laying.BESIDE_SHARE,
    "behind": laying.BEHIND_SHARE,
    "at hand": laying.AT_HAND_SHARE,
    "balance": laying.UNBALANCED_SHARE,
    "front lines": laying.LINE_SHARE,
    "gaps": laying.GAP_SHARE,
    "centring": laying.CENTRING_SHARE,
    "crossings": laying.CROSSING_SHARE,
    "on deck": laying.ON_TOP_SHARE,
    "other plugs": laying.PLUG_SHARE,
}
"""By the words with which a rig weighs them, in the order in which they are told."""


def weights(rig: Rig) -> dict[str, int]:
    """Each term's weight: as the rig sets it, else as usual."""
    stated = {weight.term: weight.share.value for weight in rig.weights}
    return {term: round(stated.get(term, usual.value)) for term, usual in TERMS.items()}


def share_of(rig: Rig, signal: str, weighed: dict[str, int]) -> int:
    """What a lead that carries no sound weighs: what its cable costs beside the audio cable, where both have a price and the rig sets
    no weight; else the weight of such leads."""
    priced = priced_share(rig, signal)
    return weighed["other leads"] if priced is None else round(weighed["audio leads"] * priced)


def priced_share(rig: Rig, signal: str) -> float | None:
    """The price of a signal's cable as a share of that of the audio cable; None where one is not stated, or the rig sets the weight."""
    if any(weight.term == "other leads" for weight in rig.weights):
        return None
    here, audio = price_per_metre(rig, signal), price_per_metre(rig, "audio")
    if here is None or audio is None or here[1] != audio[1] or not audio[0]:
        return None
    return here[0] / audio[0]


def price_per_metre(rig: Rig, signal: str) -> tuple[float, str] | None:
    """What a metre of the cable for a signal costs, and in which currency, where that is stated."""
    cable = cable_for(rig, signal)
    if cable is None or cable.price is None:
        return None
    amount, currency = amount_and_currency(cable.price)
    return float(amount), currency


def cable_for(rig: Rig, signal: str) -> Cable | None:
    """The cable of which the rig makes the leads of a signal."""
    return rig.stock.cables.get(dict(rig.lead_wishes.cables).get(signal, ""))
