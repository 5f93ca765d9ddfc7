"""Papers, plates, readings of instruments, recorded departures."""

from __future__ import annotations

from checker.design.vocabulary.key import Key, Kind
from checker.design.vocabulary.make import named, names, quantity, text, texts, word, words, yes
from checker.design.vocabulary.words import LABELS

TESTS = (
    "rcd trip", "neutral-earth link", "earth continuity", "insulation resistance", "polarity", "loop impedance",
    "voltage drop", "residual current", "function", "dielectric strength", "inlet pins", "test button",
    "mode change",
)  # fmt: skip

STOPS = ("alarm", "charge stop", "discharge stop", "cold stop")

# What only a look at the finished vehicle shows; no drawing does.
INSPECTIONS = (
    "steering and wheels", "structure", "strike zones", "gas pipes", "fuel lines", "vent hose", "battery tray",
    "covers", "supports", "lamps", "drains", "services", "chassis connections", "splices", "strain relief",
    "outlet faces", "array fixing", "roof entries", "device access", "driving aids", "operation", "devices",
    "vibration", "moving cables", "old wiring", "as built", "generator space", "barriers", "live parts",
    "metal parts", "lugs", "mains joints", "colours",
    "projections", "bends",
    "fuse ratings", "source labels", "knocks", "warm joints", "hot parts",
)  # fmt: skip

PAPERS = Kind(
    "papers",
    "Documents that go with the vehicle.",
    (
        word("diagram", ("generated", "drawn"), "The wiring diagram; `none` when there is not."),
        words(
            "diagram shows", ("sizes", "lengths", "devices", "sources", "earthing"),
            "What the diagram tells; earthing in each mode.",
        ),
        yes("certificate", "A certificate was given; `none` when not."),
        text("certificate.electrical", "Number of the electrical certificate."),
        word(
            "certificate.kind",
            ("electrical safety certificate", "warrant of electrical fitness", "compliance plate", "declaration"),
            "Which of the papers that places of use ask for it is.",
        ),
        text("certificate.gas", "Number of the gas certificate."),
        text("certificate.vehicle", "Number of the vehicle modification certificate."),
        Key("certificate.date", "date", "Its date."),
        words(
            "manual",
            (
                "charging", "isolating", "fuses", "lithium handling", "testing", "inspection interval", "lead use",
                "shut down", "battery space", "residual devices",
            ),
            "What the user book tells.",
        ),
        text("risk assessment", "Its reference."),
        words(
            "risk assessment tells",
            ("containing", "venting", "detecting", "disconnecting"),
            "What it says of a failing cell: how it is contained, vented and detected, and who can disconnect it.",
        ),
        Key("next inspection", "date", "When it is due."),
        names("shut down", "equipment", "What is switched off to shut all sources down, in order."),
        texts("editions", "Editions of the standards that were applied."),
        words("inspected", INSPECTIONS, "What was looked at on the finished vehicle and found right."),
        words("found wrong", INSPECTIONS, "What was looked at and has to be put right."),
    ),
    sections=("papers",),
)  # fmt: skip

LABELS_KIND = Kind(
    "labels",
    "How the labels are made.",
    (
        word("material", ("engraved", "stamped", "printed", "handwritten"), "How they are made."),
        word("sheet", ("metal", "laminate", "anodised aluminium"), "What they are cut from."),
        quantity("thickness", "m", "Thickness of that sheet."),
        text("language", "Their languages, two letters each."),
        text("sold in", "Country of first sale, two letters. Left out: where it is registered."),
        yes("signal words", "They use the standard signal words and symbols."),
        words("main switch", LABELS, "What the label at the main switch says."),
    ),
    sections=("labels",),
)

READING = Kind(
    "reading",
    "What an instrument said.",
    (
        named("mode", "modes", "The mode it was taken in."),
        named("at", "anything", "Where."),
        quantity("voltage", "V", "Voltage read."),
        quantity("current", "A", "Current read."),
        quantity("resistance", "Ω", "Resistance read."),
        quantity("temperature", "°C", "Temperature read."),
        quantity("power", "W", "Power read."),
        quantity("time", "s", "Time read."),
        word("test", TESTS, "The test, when it is not a plain reading."),
        word(
            "result",
            ("one", "several", "right", "wrong", "open", "closed"),
            "What a test showed; `none` for nothing found.",
        ),
        words("tried", STOPS, "What of a battery management was tried, in a test of its function."),
        Key("date", "date", "When."),
        text("meter", "With which instrument."),
        text("by", "Who read it."),
    ),
    sections=("readings",),
)

DEPARTURE = Kind(
    "departure",
    "A recorded exception to one rule.",
    (
        text("rule", "The rule.", required=True),
        text("about", "The subject, by its name.", required=True),
        text("reason", "Why.", required=True),
        text("by", "Who decided it.", required=True),
        text("reference", "Licence or note that stands for it.", required=True),
        Key("date", "date", "When.", required=True),
    ),
    sections=("departures",),
)

PAPER_KINDS = (PAPERS, LABELS_KIND, READING, DEPARTURE)
