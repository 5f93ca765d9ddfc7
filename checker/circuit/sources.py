"""Everything from which supply can reach the graph, and everything that draws from it."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Source
from checker.circuit.network import Network
from checker.circuit.ports import SUPPLY_CONTACTS
from checker.design.given import RatedVoltage
from checker.design.model import Equipment
from checker.quantities import UNKNOWN, Unknown, divide, multiply

LOADS = frozenset(
    {
        "load", "lamp", "outlet", "fridge", "air conditioner", "motor", "fan", "valve", "brake", "alarm", "detector",
        "joined unit",
    }
)  # fmt: skip


def add_sources(network: Network) -> None:
    """Find sources and sinks from the kinds of equipment."""
    starts = dict.fromkeys((str(c.start.equipment), c.start.port) for c in network.circuits)  # sources in file order
    for item in network.equipment.values():
        if item.name in network.units:
            continue
        make = MAKERS.get(item.kind)
        if make is not None:
            make(network, item, starts)
        elif item.kind in LOADS:
            for pole in ("+", "L"):
                if f"{item.name}:{pole}" in network.near:
                    network.sinks.setdefault(f"{item.name}:{pole}", []).append(item)


def _dc(network: Network, item: Equipment, port: str, *, storage: bool, limit: Any) -> None:
    live, back = f"{item.name}:{port}+", f"{item.name}:{port}-"
    network.add_source(Source(item, port, live, back, storage=storage, limit=limit, system="dc"))


def _ac(network: Network, item: Equipment, port: str, *, storage: bool, limit: Any) -> None:
    live, back = f"{item.name}:{port}L", f"{item.name}:{port}N"
    network.add_source(Source(item, port, live, back, storage=storage, limit=limit, system="ac"))


def _sink(network: Network, item: Equipment, node: str) -> None:
    network.sinks.setdefault(f"{item.name}:{node}", []).append(item)


def _battery(network: Network, item: Equipment, starts: Any) -> None:
    _dc(network, item, "", storage=True, limit=None)
    _sink(network, item, "+")


def _alternator(network: Network, item: Equipment, starts: Any) -> None:
    _dc(network, item, "", storage=False, limit=item.value("rating"))


def _array(network: Network, item: Equipment, starts: Any) -> None:
    arrangement = item.value("arrangement")
    strings = arrangement[1] if isinstance(arrangement, tuple) else UNKNOWN
    count = float(strings) if isinstance(strings, int) else strings
    _dc(network, item, "", storage=False, limit=multiply(item.value("short current"), count))


def _converter(network: Network, item: Equipment, starts: Any) -> None:
    both = item.value("both ways")
    for side in ("low", "high"):
        out = (item.name, side) in starts
        if both is True or out or (both is not False and not _any_out(item, starts)):
            _dc(network, item, side, storage=False, limit=item.value(f"sides.{side}.current"))
        if both is not False or not out:
            _sink(network, item, f"{side}+")


def _any_out(item: Equipment, starts: Any) -> bool:
    return (item.name, "low") in starts or (item.name, "high") in starts


def _charger(network: Network, item: Equipment, starts: Any) -> None:
    _dc(network, item, "dc", storage=False, limit=item.value("dc.current"))
    _sink(network, item, "acL")


def _controller(network: Network, item: Equipment, starts: Any) -> None:
    _dc(network, item, "battery", storage=False, limit=item.value("output.current"))
    _sink(network, item, "pv+")


def _inverter(network: Network, item: Equipment, starts: Any) -> None:
    _ac(network, item, "ac", storage=False, limit=_ac_current(item))
    _sink(network, item, "dc+")


def _inverter_charger(network: Network, item: Equipment, starts: Any) -> None:
    _ac(network, item, "ac-out", storage=False, limit=_ac_current(item))
    _dc(network, item, "dc", storage=False, limit=item.value("charger.current"))
    _sink(network, item, "dc+")
    _sink(network, item, "ac-inL")


def _ac_current(item: Equipment) -> Any:
    return divide(item.value("power"), item.value("ac.voltage"))


def _coupling(network: Network, item: Equipment, starts: Any) -> None:
    ports = dict.fromkeys(port for name, port in starts if name == item.name and port in SUPPLY_CONTACTS)
    for port in ports:
        _dc(network, item, str(port), storage=True, limit=item.value(f"supplies.{port}.fuse"))


def _shore(network: Network, item: Equipment, starts: Any) -> None:
    site = network.design.vehicle.value("site outlet")
    _ac(network, item, "", storage=False, limit=item.value("rating") if isinstance(site, Unknown) else site)


def _generator(network: Network, item: Equipment, starts: Any) -> None:
    volts = network.design.vehicle.value("supply.voltage")
    _ac(network, item, "", storage=False, limit=divide(item.value("power"), volts))


def _traction(network: Network, item: Equipment, starts: Any) -> None:
    """Its limit is the rated current, else the power over the voltage; its system shows in what hangs on it."""
    rated = item.value("voltage")
    limit = item.value("rating")
    if isinstance(limit, Unknown) and not item.has("rating"):
        limit = divide(item.value("power"), rated.volts if isinstance(rated, RatedVoltage) else UNKNOWN)
    for make, pole in ((_dc, "+"), (_ac, "L")):
        if f"{item.name}:{pole}" in network.near:
            make(network, item, "", storage=False, limit=limit)


MAKERS = {
    "battery": _battery,
    "bank": _battery,
    "alternator": _alternator,
    "solar array": _array,
    "dc converter": _converter,
    "charger": _charger,
    "solar controller": _controller,
    "inverter": _inverter,
    "inverter-charger": _inverter_charger,
    "vehicle coupling": _coupling,
    "shore inlet": _shore,
    "generator": _generator,
    "traction outlet": _traction,
}
