"""The cautions that a sheet about power bears."""

from __future__ import annotations

from rigc.reports.content import Paragraph

POWER_CAUTIONS = Paragraph(
    "cautions",
    (
        "Check voltage and polarity of every DC plug with a meter before it goes into a unit: too much voltage and "
        "reversed polarity destroy units at once.",
        "Feed AC only to units marked for AC. Use series and parallel leads only as the supply's maker allows, label "
        "them, keep them apart.",
        "Mains: use certified supplies and lead sets only. Anything hard-wired, and protective earth, is made and tested "
        "by a competent or licensed person to the local code; rigc designs none of it. Never disconnect or lift a "
        "protective earth.",
        "Unplug mains before a lid is opened: supplies hold charge, and nothing inside is for the user.",
        "Computed from the facts entered; verify by measurement before use; the builder is responsible for the rig as "
        "built.",
    ),
    heading="before you plug in",
    kind="caution",
)
