"""`rigc explain`: what does a rule say, why does it matter, what is to be done?"""

from __future__ import annotations

import click

from rigc.cli.commands.completion import rules
from rigc.cli.screen import Screen


@click.command()
@click.argument("rule", required=False, shell_complete=rules)
@click.pass_obj
def explain(screen: Screen, rule: str | None) -> int:
    """Print the page of a rule.

    RULE is its name; without it, all rules are listed.
    """
    from rigc.diagnostics.explain import UnknownRule, all_kinds, listing, page

    kinds = all_kinds()
    try:
        screen.out(page(kinds, rule) if rule else listing(kinds))
    except UnknownRule as fault:
        raise click.UsageError(str(fault)) from None
    return 0
