"""What opens, closes and changes over: switches, relays, combiners, changeovers, diodes."""

from __future__ import annotations

from checker.design.vocabulary.common import A_B, COMMON, DEVICE_VOLTAGE, IN_SIGHT, PLAIN, PRECHARGED
from checker.design.vocabulary.key import Kind, Port
from checker.design.vocabulary.make import named, names, quantity, signal, texts, word, yes
from checker.design.vocabulary.protection import POLES, RATING
from checker.design.vocabulary.words import EITHER_POLES, OPERATED

CONTACTS = (
    RATING,
    DEVICE_VOLTAGE,
    POLES,
    yes("breaks load", "It may be opened under its rated current."),
    yes("isolates", "It isolates when open."),
    word("operated", OPERATED, "How it is worked."),
    signal("driven by", "The signal or port that works it."),
    word("on loss", ("opens", "closes", "stays"), "What it does when its drive is lost."),
    word("on return", ("stays open", "closes"), "What it does when its drive returns after it had opened on the loss."),
    yes("manual override", "A hand can work it when its drive fails."),
    yes("shows state", "It shows whether it is open."),
    yes("lockable", "It can be locked open."),
    quantity("withstand", "A", "Short-circuit current it stands, with the device that guards it."),
    IN_SIGHT,
    names("interlocked with", "equipment", "Switches that cannot be closed together with it."),
)
REST = word("rest", ("open", "closed"), "Its state with no drive, or as left by hand.")
COIL = quantity("coil", "V", "Coil voltage.")
PRECHARGE = (
    PRECHARGED,
    quantity("precharge resistance", "Ω", "The resistor of the pre-charge."),
    quantity("precharge time", "s", "How long the pre-charge lasts."),
    quantity("precharge power", "W", "Power that its resistor stands for ever."),
)

SWITCH = Kind(
    "switch", "A switch worked by hand or by something other than a coil.", (*COMMON, *CONTACTS, REST, *PRECHARGE),
    ports=A_B, sections=PLAIN, through=("a", "b"),
)  # fmt: skip
RELAY = Kind(
    "relay",
    "A switch worked by a coil.",
    (*COMMON, *CONTACTS, REST, *PRECHARGE, COIL, word("form", ("make", "break", "latching"), "Contact form.")),
    ports=(*A_B, Port("coil", ("",))),
    sections=PLAIN,
    through=("a", "b"),
)
COMBINER = Kind(
    "combiner",
    "A relay that joins two batteries by itself.",
    (
        *COMMON,
        *CONTACTS,
        REST,
        COIL,
        word("senses", ("voltage", "ignition", "engine"), "What it acts on."),
        quantity("joins at", "V", "Voltage at which it closes."),
        quantity("parts at", "V", "Voltage at which it opens."),
        yes("both ways", "It senses either side."),
    ),
    ports=(*A_B, Port("coil", ("",))),
    sections=PLAIN,
    through=("a", "b"),
)
CHANGEOVER = Kind(
    "changeover",
    "A switch or relay that joins its common to one of several throws.",
    (
        *COMMON,
        *CONTACTS,
        COIL,
        texts("throws", "Names of the throws in order; `open` is a throw that joins nothing."),
        yes("break before make", "It leaves one throw before it reaches the next."),
        quantity("gap", "s", "How long it joins nothing on the way."),
        named("coil on", "circuits", "The circuit that feeds the coil."),
        named("rest", "throws", "The throw with no drive, or as left by hand."),
    ),
    ports=(Port("common", EITHER_POLES), Port("coil", ("",))),
    sections=PLAIN,
    more_ports="throws",
    through=("", ""),
)
DIODE = Kind(
    "diode",
    "A diode or an electronic one: current passes from a to b.",
    (*COMMON, RATING, DEVICE_VOLTAGE, quantity("drop", "V", "Voltage across it at rated current.")),
    ports=A_B,
    sections=PLAIN,
    through=("a", "b"),
)

SWITCHING = (SWITCH, RELAY, COMBINER, CHANGEOVER, DIODE)
