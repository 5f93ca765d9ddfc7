"""The parts of a design file at its top level, in the order a writer meets them."""

from __future__ import annotations

from checker.design.vocabulary.key import Section

SECTIONS: tuple[Section, ...] = (
    Section("fitout", "value", "Number of the file format: 1.", required=True),
    Section("title", "value", "A title for people.", required=True),
    Section("code", "value", "Code of practice whose limits apply.", required=True),
    Section("date", "value", "Date of this state of the design."),
    Section("purpose", "value", "A design, or a survey of somebody else's work."),
    Section("scope", "item", "What was done, kept and left out.", kind="scope"),
    Section("seen", "item", "What the writer of a survey could look at.", kind="seen"),
    Section("people", "items", "Class of work to licence.", kind="person"),
    Section("vehicle", "item", "The vehicle, the supply it meets, its axes and masses.", kind="vehicle", required=True),
    Section("usual", "item", "What holds of every cable and circuit that does not say otherwise.", kind="usual"),
    Section("cables", "items", "The reels on the van.", kind="cable"),
    Section("parts", "items", "What several pieces of equipment have in common."),
    Section("places", "items", "Where things are.", kind="place"),
    Section("passes", "items", "Holes between places.", kind="pass"),
    Section("moving", "items", "Parts of the vehicle that move.", kind="moving part"),
    Section("services", "items", "Lines of gas, fuel, water, hot air and exhaust.", kind="service"),
    Section("equipment", "items", "Everything with terminals.", required=True),
    Section("joints", "items", "Where circuits meet and nothing else stands; the same grammar as equipment."),
    Section("circuits", "items", "The walked runs.", kind="circuit", required=True),
    Section("looms", "items", "Circuits that run together.", kind="loom"),
    Section("modes", "items", "What runs when.", kind="mode", required=True),
    Section("day", "item", "One day of sun, driving, shore and use.", kind="day"),
    Section("essential", "value", "Loads that people depend on."),
    Section("papers", "item", "Documents.", kind="papers"),
    Section("labels", "item", "How labels are made.", kind="labels"),
    Section("readings", "list", "What the instruments said.", kind="reading"),
    Section("departures", "list", "Recorded exceptions.", kind="departure"),
)
