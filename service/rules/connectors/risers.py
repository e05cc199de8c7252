"""Risers on SATA plugs."""

from service.case.case import Case, Joint
from service.facts.contacts import DRIVE_PLUG_12V_WATTS
from service.parts.records import Riser
from service.rules.connectors.strains import plug_watts

SATA = "sata-power"


def over_sata(case: Case, joint: Joint) -> bool:
    """Say whether a joint is a riser that draws more through a SATA plug than its pins carry."""
    if not isinstance(case.build.units[joint.at.unit].part, Riser):
        return False
    return plug_watts(case, joint) > DRIVE_PLUG_12V_WATTS.value and any(plug.connector == SATA for plug in joint.plugs)
