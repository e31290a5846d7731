"""Findings for the programs of others: reviews, editors, dashboards."""
