"""The names of the publications that figures are taken from."""

from typing import Final

ATX_3: Final = "Intel, ATX Version 3.0 Multi Rail Desktop Platform Power Supply Design Guide, 336521"
ATX12VO: Final = "Intel, ATX12VO Desktop Power Supply Design Guide, 613768"
ADDENDUM: Final = "Intel, ATX12V and ATX12VO PSU Design Guide Addendum, 621484 rev 004"
ATX12V_2: Final = "Intel, ATX12V Power Supply Design Guide, Version 2.0"
CEM: Final = "PCI-SIG, PCI Express Card Electromechanical Specification"
SATA: Final = "SATA specification's contact rating, as reported by an implementer holding it"
HANDBOOK: Final = "Upgrading and Repairing PCs, power supply chapter"
NEC: Final = "NEC 210.19(A)(1) and 210.20(A)"
COUPLERS: Final = "AS/NZS 60320.1:2004"
EFFICIENCY: Final = "80 PLUS programme levels, 115 V internal"
WIRE: Final = "NBS Handbook 100 / ASTM B258 values, as printed by a cable-test maker"
