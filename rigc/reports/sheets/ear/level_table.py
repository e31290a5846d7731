"""Level table: every audio lead with its margin, and every place where paths meet."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.model.rig import Rig
from rigc.reports.content import Sheet
from rigc.reports.front.cautions import care
from rigc.reports.signal.levels.edge_table import edge_table
from rigc.reports.signal.levels.notes import reading
from rigc.reports.signal.levels.parallel_table import parallel_table


def level_table(rig: Rig, power: PowerAssignment, levels: Levels, paths: ParallelPaths) -> Sheet:
    """Levels lead by lead, then what runs side by side."""
    return Sheet(
        name="level-table",
        title="Level table",
        reader="builder, tech",
        blocks=(
            care("level-table", rig, power, "before you measure", "cautions"),
            edge_table(rig, levels.edges),
            parallel_table(paths),
            reading(rig),
        ),
    )


PLACE = 1
SHEET = level_table
