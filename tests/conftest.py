"""What all tests share. Under RIGC_CI a test that would be skipped fails: there everything must have run."""

from __future__ import annotations

import os
from collections.abc import Generator

import pytest
from hypothesis import HealthCheck, settings

# No test is judged by the clock of the machine on which it runs.
settings.register_profile("rigc", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("rigc")


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
