"""The file itself, the vehicle, the people, what was done and what was seen."""

from __future__ import annotations

from checker.design.vocabulary.key import Key, Kind
from checker.design.vocabulary.make import count, names, quantity, text, texts, word, yes
from checker.design.vocabulary.words import MATERIALS, RESIDUAL_TYPES

CODES = ("au-nz", "intl", "eu", "uk", "us-rv", "us-boat", "intl-boat", "ca")
COUNTRIES = ("au", "nz", "uk", "eu", "us", "ca", "za", "other")
EARTHING = ("TN-S", "TN-C-S", "TN-C", "TT", "IT")
PURPOSES = ("design", "survey")
WORK = ("mains work", "elv work", "gas work", "vehicle work")

FIT_OUT = Kind(
    "fit-out",
    "What stands at the top of the file as single values.",
    (
        Key("fitout", "count", "Number of the file format: 1.", required=True),
        text("title", "A title for people.", required=True),
        word("code", CODES, "Code of practice whose limits apply.", required=True),
        Key("date", "date", "Date of this state of the design."),
        # A survey asks more gently; the stricter of the two stands unless the writer says so.
        word("purpose", PURPOSES, "A design, or a survey of somebody else's work. Left out: design.", default="design"),
        names("essential", "equipment", "Loads that people depend on, beside those marked essential."),
    ),
    sections=("",),
)

VEHICLE = Kind(
    "vehicle",
    "The vehicle.",
    (
        word("kind", ("motorhome", "campervan", "caravan", "trailer", "boat", "unit"), "What it is.", required=True),
        word("hull", ("sailing monohull", "other"), "A boat: whether it sails heeled."),
        # Nobody fits out a horse box without knowing it.
        yes("livestock", "It is made for carrying livestock. Left out: no.", default="false"),
        Key("built", "date", "When it was built."),
        word("registered", COUNTRIES, "Where it is registered."),
        count("sleeps", "People it sleeps."),
        word("use", ("own", "hired"), "Whose hands it is in: the owner's, or hired out and used hard."),
        # Wider than any land it is likely to meet: cold raises the voltage of an array, heat takes from cables.
        quantity("ambient.low", "°C", "Coldest air it is used in. Left out: -20 °C.", default="-20 °C"),
        quantity("ambient.high", "°C", "Hottest air it is used in. Left out: 50 °C.", default="50 °C"),
        quantity("terminal limit", "°C", "What every lug, holder and terminal aboard stands, where none says its own."),
        quantity("supply.voltage", "V", "Mains voltage of the sites."),
        quantity("supply.frequency", "Hz", "Mains frequency."),
        count("supply.phases", "Phases."),
        word("supply.earthing", EARTHING, "Earthing of the sites, IEC 60364-1."),
        yes("supply.polarised", "Live and neutral cannot be swapped by turning a plug."),
        quantity("site outlet", "A", "Rated current of the outlet on the site. Left out: as the inlet."),
        # What a site pillar near its transformer can reach; the lead lowers it. Common practice, no source.
        quantity(
            "supply.fault current", "A", "Greatest short-circuit current at a site. Left out: 6 kA.", default="6 kA"
        ),
        quantity("supply.loop impedance", "Ω", "Impedance of the earth-fault loop at the site outlet."),
        quantity("site rcd.trips at", "A", "Residual-current device at the site outlet."),
        word("site rcd.type", RESIDUAL_TYPES, "Its type."),
        quantity("site pillar.height", "m", "A pillar that belongs to the design: height of its underside."),
        count("site pillar.outlets", "Outlets in it."),
        count("site pillar.pitches", "Pitches that it serves."),
        quantity("site pillar.distance", "m", "Greatest distance from it to the pitches it serves."),
        Key("site pillar.degree", "degree", "Degree of protection of its outlets."),
        quantity("site pillar.rating", "A", "Rated current of each outlet."),
        yes("site pillar.own devices", "Each outlet has an overcurrent and a residual-current device of its own."),
        # Vehicles with the positive on the chassis have not been built for decades.
        yes("chassis.negative", "The negative is on the chassis. Left out: true.", default="true"),
        quantity("chassis.resistance", "mΩ", "Resistance of the chassis between its connection points."),
        quantity("chassis.carries", "A", "Current that its joints and straps carry back, as the maker permits."),
        word("chassis.material", MATERIALS, "What the chassis is made of."),
        text("axes.origin", "Where the vehicle axes start."),
        word("axes.x", ("rearward", "forward"), "Where x points."),
        word("axes.y", ("to the right", "to the left"), "Where y points."),
        word("axes.z", ("up", "down"), "Where z points."),
        Key("envelope", "box", "The box around the vehicle."),
        quantity("masses.gross", "kg", "Greatest permitted mass."),
        quantity("masses.front limit", "kg", "Greatest load of the front axle."),
        quantity("masses.rear limit", "kg", "Greatest load of the rear axle."),
        quantity("masses.ball limit", "kg", "Greatest load of the tow ball."),
        quantity("masses.wheelbase", "m", "Distance of the axles."),
        quantity("masses.axle at", "m", "A caravan: where its axle, or the middle of several, is along x."),
        quantity("masses.axle limit", "kg", "A caravan: greatest load of its axle, or of several together."),
        quantity("masses.ball to axle", "m", "A caravan: distance of the tow ball from its axle."),
        quantity("masses.left limit", "kg", "Greatest load of the wheels at the left."),
        quantity("masses.right limit", "kg", "Greatest load of the wheels at the right."),
        quantity("masses.track", "m", "Distance of the left from the right wheels."),
        quantity("masses.payload kept", "kg", "Mass kept free for people and goods, without those told by themselves."),
        Key("masses.payload at", "point", "The middle of that mass. Left out: anywhere in the vehicle."),
        quantity("masses.people", "kg", "The people in it, where they are not part of the payload kept."),
        Key("masses.people at", "point", "The middle of the people."),
        quantity("masses.water", "kg", "Water in full tanks, where it is not part of the payload kept."),
        Key("masses.water at", "point", "The middle of the water."),
        quantity("masses.cables", "kg", "Cables and small parts that the work put in; left out where it is not told."),
        quantity("masses.removed", "kg", "What the work took out: an old battery, a generator."),
        Key("masses.removed at", "point", "The middle of what was taken out."),
        quantity("masses.before.front", "kg", "Front axle before the work."),
        quantity("masses.before.rear", "kg", "Rear axle before the work."),
        quantity("masses.before.left", "kg", "Wheels at the left before the work."),
        quantity("masses.before.right", "kg", "Wheels at the right before the work."),
        quantity("masses.before.ball", "kg", "Tow ball before the work."),
        quantity("masses.before.total", "kg", "The vehicle before the work."),
    ),
    sections=("vehicle",),
)

PERSON = Kind(
    "person",
    "Who does one class of work: mains work, elv work, gas work or vehicle work.",
    (text("licence", "Number of the licence, or what takes its place."), text("class", "Class of the licence.")),
    sections=("people",),
    names=WORK,
)

SCOPE = Kind(
    "scope",
    "What the work is about.",
    (texts("done", "What was done."), texts("kept", "What was kept."), texts("excluded", "What this file leaves out.")),
    sections=("scope",),
)

SEEN = Kind(
    "seen",
    "What the writer could look at.",
    (
        text("by", "Who looked, and on what ground."),
        Key("date", "date", "When."),
        names("covers off", "places", "Places that were opened."),
        names("not opened", "places", "Places that were not opened."),
    ),
    sections=("seen",),
)

VEHICLE_KINDS = (FIT_OUT, VEHICLE, PERSON, SCOPE, SEEN)
