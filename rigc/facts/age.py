"""Age: how long a stated fact may be relied on before somebody looks again."""

from __future__ import annotations

from rigc.facts.fact import Fact

OLD_MONTHS = Fact(24, "months", "a fact that is older is confirmed anew", "common practice, no source")
