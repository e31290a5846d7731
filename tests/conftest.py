"""What all tests share. Under RIGC_CI a test that would be skipped fails: there everything must have run."""

from __future__ import annotations

import gc
import os
from collections.abc import Generator, Iterator

import pytest
from hypothesis import HealthCheck, settings

from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.labelling import Ground
from rigc.reports.drawings.means.wish import Wish

# No test is judged by the clock of the machine on which it runs.
settings.register_profile("rigc", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("rigc")

# Searches for circles took a quarter of the time. What stands after the collection of tests stays to the end: no search looks there.
gc.set_threshold(50_000, 10, 10)


def pytest_collection_finish() -> None:
    """Freezes what was imported and collected."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="module")
def names_anywhere() -> Iterator[None]:
    """The names in a drawing stand at the first of their places, free or not: to find free ones takes most of the time of a folder,
    and which of them are free says nothing that the rest of the sheets does not."""
    from cases import forget

    def place(_: Ground, wishes: tuple[Wish, ...]) -> tuple[Choice | None, ...]:
        return tuple(next(iter(wish.choices()), None) for wish in wishes)

    forget()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Ground, "_placed", place)
        yield
    forget()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Turn a skip of a test into a failure, in CI."""
    report = yield
    if os.environ.get("RIGC_CI") and report.skipped and not hasattr(report, "wasxfail"):
        report.outcome = "failed"
        report.longrepr = f"skipped in CI: {report.longrepr}"
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report() -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """Turn a skip of a whole file into a failure, in CI."""
    report = yield
    if os.environ.get("RIGC_CI") and report.skipped:
        report.outcome = "failed"
        report.longrepr = f"skipped in CI: {report.longrepr}"
    return report
