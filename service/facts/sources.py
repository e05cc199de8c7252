"""Names of the documents that the figures come from, once each."""

from typing import Final

GUIDE_3_0: Final = (
    "Intel, ATX Version 3.0 Multi Rail Desktop Platform Power Supply Design Guide, 336521, rev. 2.0 and 2.01"
)
GUIDE_3_1: Final = "Intel, ATX Version 3.x Multi Rail Desktop Platform Power Supply Design Guide, 336521, rev. 2.1a"
GUIDE_12VO: Final = "Intel, ATX12VO Desktop Power Supply Design Guide, 613768, rev. 2.01"
GUIDE_2_0: Final = "Intel, ATX12V Power Supply Design Guide, version 2.0"
PRESS_3_0: Final = "technical press summary of ATX 3.0 load regulation"
GUIDE_0_9: Final = "Intel, ATX Power Supply Design Guide, version 0.9"
CEM_EXCURSION: Final = (
    "PCI-SIG, CEM 5.x change notice on power excursion of 300 W to 600 W cards, as in 336521 rev. 2.1"
)
CEM_SLOT: Final = "PCI-SIG, PCI Express Card Electromechanical Specification 1.1, as cited by an encyclopedia"
HANDBOOK: Final = "Upgrading and Repairing PCs, chapter on power supplies"
CONTACT_SPEC: Final = (
    "product specification PS-5556-001 of a 4.2 mm pitch connector, as transcribed by an open hardware project"
)
CONTACT_TEST: Final = "test summaries TS-000 and TS-5556-002 of a 4.2 mm pitch connector"
CONTACT_NOTES: Final = "product specifications of 12VHPWR and 12V-2x6 connectors, as quoted in two engineering notes"
SATA: Final = "SATA specification, contact rating as reported by an implementer"
ASTM_B258: Final = "ASTM B258, American wire gauge, as defined in GNU Units 2.22"
WIRE_TABLE: Final = "resistance table of an equipment maker, Equation 320"
UNITS: Final = "definitions of GNU Units 2.22"
NBS_100: Final = "NBS Handbook 100, as quoted in an engineering note"
EIGHTY_PLUS: Final = "80 PLUS programme, 115 V internal non-redundant, as tabulated by a technical explainer"
COUPLERS: Final = "AS/NZS 60320.1:2004, table of couplers, on two reference pages"
LOW_LOAD_PRESS: Final = "technical press summaries of ATX 3.0"
GUIDE_2_MEMORY: Final = "Intel, ATX12V 2.x, timing of power good, from memory"
PLUG_FUSES_MEMORY: Final = "BS 1362 and BS 1363, from memory"
NEC: Final = "NEC 210.19(A)(1) and 210.20(A), as quoted by electricians"
FAN_SPEC: Final = "Intel, 4-Wire Pulse Width Modulation (PWM) Controlled Fans Specification"
LED_MAKER: Final = "product page of an LED strip maker, 5 V strip with 60 lights a metre"
DISK_MANUALS: Final = "product manuals of two 3.5 inch 7200 rpm drives"
LAPTOP_DISK_MANUAL: Final = "product manual of a 2.5 inch drive, rev. C, Table 3"
