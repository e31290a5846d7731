"""Units that shall stay alone, and statements of the power block that put them on an outlet with others."""

from __future__ import annotations

from rigc.diagnostics.wording import listed
from rigc.model.resolve.context import Context
from rigc.model.slips.unclear_feed import UNCLEAR_FEED
from rigc.model.wishes import Feed
from rigc.syntax import nodes


def alone_apart(context: Context, feed: Feed, alone: tuple[str, ...]) -> None:
    """A finding where a unit that shall stay alone is stated to share."""
    for name in feed.units:
        if name in alone and len(feed.units) > 1:
            others = listed(each for each in feed.units if each != name)
            context.report(
                UNCLEAR_FEED.at(
                    feed.span,
                    f"'{name}' shall stay alone and shares {' and '.join(map(str, feed.outlets))} with {others}",
                    subject=(name, *feed.units),
                    label="shared here",
                    help=f"delete `{name} alone`, or give '{name}' another outlet",
                )
            )


def both_ways(context: Context, node: nodes.MayShare, alone: tuple[str, ...]) -> None:
    """A finding where a unit may share and shall stay alone."""
    names = [word.text for word in node.units if word.text in alone]
    if names:
        context.report(
            UNCLEAR_FEED.at(
                node.span,
                f"{listed(names)} may share an outlet here, and shall stay alone by another line",
                subject=tuple(names),
                label="may share here",
                help=f"delete `{names[0]} alone`, or leave '{names[0]}' out of this line",
            )
        )
