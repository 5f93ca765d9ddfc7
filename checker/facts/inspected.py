"""What only a look at the finished vehicle shows: asked for until somebody writes that it was looked at."""

from __future__ import annotations

from collections.abc import Callable

from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown

ASKED = (
    ("steering_and_wheels", "steering and wheels",
     "Cables and boxes are clear of wheels, steering, drive shafts, belts, fans and exhaust in full travel."),
    ("structure", "structure",
     "Holes and brackets weaken neither chassis nor the mounts of seats and belts, and void no approval."),
    ("strike_zones", "strike zones", "Hard equipment is out of where a belted head or body strikes."),
    ("gas_pipes", "gas pipes",
     "Cables keep their distance from gas pipes or are sleeved; none hangs on one, none returns by one."),
    ("fuel_lines", "fuel lines", "Cables keep away from the fuel system."),
    ("moving_cables", "moving cables",
     "Over the whole travel no cable of a moving part is pinched, stacked, rubbed or pulled."),
    ("vent_hose", "vent hose",
     "Openings and vent hoses of batteries end outside, away from doors, windows and an awning; hoses have no trap."),
    ("battery_tray", "battery tray", "The battery space resists acid and drains outward."),
    ("covers", "covers", "What encloses mains or unfused parts opens with a tool or key only."),
    ("supports", "supports", "No cable hangs on ties alone where its fall would matter."),
    ("lamps", "lamps",
     "Lamps are fixed to structure or lining by what holds their weight; what hangs is tied for travel."),
    ("services", "services",
     "Batteries keep their distance from lines of gas, fuel, water and hot air, and from exhausts."),
    ("drains", "drains", "Bays that can get wet drain, and parts stand above the water."),
    ("chassis_connections", "chassis connections",
     "Connections to the chassis are clean, tight metal with toothed washers and lugs of the right size."),
    ("splices", "splices",
     "Splices are sound without solder, crimped with the tool made for them, in reach, and sealed where it is damp."),
    ("mains_joints", "mains joints",
     "Every connection of the mains sits in a closed box; none lies loose in a cavity."),
    ("colours", "colours",
     "Each pole has one colour throughout, green-yellow is earth alone, and live and neutral differ as the code says."),
    ("projections", "projections",
     "Nothing that was put on roof or sides stands out with an edge or a hook where it strikes people."),
    ("strain_relief", "strain relief",
     "No pull and no vibration of a cable reaches its terminal: it is first held no farther off than the code says."),
    ("outlet_faces", "outlet faces", "No outlet lies face up, or where water or objects fall in."),
    ("array_fixing", "array fixing",
     "The roof carries the array, its fixing stands wind at road speed, and hatches and vents stay free."),
    ("roof_entries", "roof entries",
     "Roof cables endure sun, are held against wind, and enter by sealed glands with a drip loop and no sharp edge."),
    ("device_access", "device access", "Every protective device is within reach and its rating readable."),
    ("driving_aids", "driving aids", "Nothing that protects the driver is disturbed while everything added runs."),
    ("vibration", "vibration",
     "Connections lock against vibration, boxes are fixed, and no heavy part hangs on its wires."),
    ("each_device", "devices", "Each fuse and breaker was opened in turn, and its circuit went dead."),
    ("old_wiring", "old wiring",
     "Wiring that is kept was looked at for size, damage, age, polarity and links of neutral and earth."),
    ("as_built", "as built", "Lengths, joints and settings in the file are those of the finished vehicle."),
    ("barriers", "barriers",
     "In each panel and lamp that holds mains and extra-low voltage a fixed barrier or own space parts them."),
    ("live_parts", "live parts",
     "No live part of the mains, and no bare stud of battery, bar, fuse or inverter, can be touched in use."),
    ("generator_space", "generator space",
     "The space of a built-in generator is vapour tight inwards and lined with metal; exhaust and fuel run outside."),
    ("metal_parts", "metal parts",
     "Every metal part within touch that mains wiring could make live stands in the file, or is joined to the earth."),
    ("warm_joints", "warm joints",
     "Every high-current joint was read near full load, warm or in millivolts, and none stood out."),
    ("lugs", "lugs", "Every lug has the size of its cable and of its stud, and no stud holds more than it may."),
    ("hot_parts", "hot parts",
     "Cables keep clear of exhaust, heaters, flues and cookers, or a shield and a higher class take their heat."),
    ("bends", "bends", "No cable at rest lies in a tighter bend than its maker or the code allows."),
    ("fuse_ratings", "fuse ratings", "At each fuse and breaker its rating, and that of its replacement, can be read."),
    ("source_labels", "source labels", "At each point of work a label tells of every source that feeds it."),
    ("knocks", "knocks", "Where knocks, loads or feet reach a cable, conduit, duct or a cover takes them."),
    ("operation", "operation", "Every circuit was switched on and off, and does what it is for."),
)  # fmt: skip
"""Fact, word under `papers.inspected`, what is looked for."""


def answer(word: str) -> Callable[[Subject], Truth]:
    """The fact of one look: yes or no as written, else a question."""

    def look(s: Subject) -> Truth:
        papers = s.item.papers
        wrong, right = s.read(papers, "found wrong"), s.read(papers, "inspected")
        if isinstance(wrong, tuple) and word in wrong:
            return False
        if isinstance(right, tuple) and word in right:
            return True
        return Unknown(f"nobody wrote that this was looked at: {word}")

    return look


@fact("design", "knocks_told", type="yes/no", says="Somebody wrote what a look for knocks, loads and feet found.",
      method="`knocks` under `papers.inspected` or `papers.found wrong`")  # fmt: skip
def knocks_told(s: Subject) -> bool:
    return not isinstance(answer("knocks")(s), Unknown)


for _name, _word, _says in ASKED:
    fact("design", f"{_name}_inspected", type="yes/no", says=_says, method=f"`{_word}` under `papers.inspected`")(
        answer(_word)
    )
