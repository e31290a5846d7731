"""Loading table: what every section of the path sees in every state, with the responses of passive instruments."""

from __future__ import annotations

from rigc.analysis.signal.loading.loading import Loading
from rigc.model.rig import Rig
from rigc.reports.content import Sheet
from rigc.reports.drawings.plots.response_plot import response_plots
from rigc.reports.signal.loading.notes import reading
from rigc.reports.signal.loading.pickup_table import pickup_table
from rigc.reports.signal.loading.response_table import response_table
from rigc.reports.signal.loading.section_table import section_table


def loading_table(rig: Rig, loading: Loading) -> Sheet:
    """The curves, the responses in figures, the sections, how to read them. Only here curves are reckoned."""
    driven = tuple(each for section in loading.sections if (each := loading.figures(section).by_pickup) is not None)
    return Sheet(
        name="loading-table",
        title="Loading table",
        reader="builder",
        blocks=(
            *response_plots(loading, driven),
            *(each for each in (pickup_table(driven),) if each is not None),
            response_table(loading, driven),
            section_table(rig, loading),
            reading(loading),
        ),
        landscape=True,
    )


PLACE = 2
SHEET = loading_table
