"""The shape of each statement: one frozen class per grammar rule, gathered under their names. How it is written, its rule says."""

from rigc.syntax.nodes.deck import *
from rigc.syntax.nodes.jacks import *
from rigc.syntax.nodes.leads import *
from rigc.syntax.nodes.node import *
from rigc.syntax.nodes.power import *
from rigc.syntax.nodes.revision import *
from rigc.syntax.nodes.rig import *
from rigc.syntax.nodes.signal import *
from rigc.syntax.nodes.stock import *
from rigc.syntax.nodes.supply import *
from rigc.syntax.nodes.things import *
