"""Where the management of a bank stops: the voltage and the temperature, against what its cells stand."""

from __future__ import annotations

from typing import Any

from checker.facts.bank import TABLE_SOURCE, of_unit, series_parallel, voltage_by_cells
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import multiply


@fact("bank", "over_voltage_stop", unit="V", says="Voltage at which its management stops charging; none when it never "
      "does.", method="unit times units in series")  # fmt: skip
def over_voltage_stop(s: Subject) -> Any:
    return multiply(of_unit(s, s.item, "bms.over voltage"), series_parallel(s, s.item)[0])


@fact("bank", "cell_voltage_limit", unit="V", says="Greatest voltage that its cells may see while charging.",
      method="highest cell voltage of the chemistry times cells in series", source=TABLE_SOURCE)  # fmt: skip
def cell_voltage_limit(s: Subject) -> Any:
    return voltage_by_cells(s, series_parallel(s, s.item)[0], 1)


@fact("bank", "hot_stop", unit="°C", says="Cell temperature at which its management stops; none when it never does.")
def hot_stop(s: Subject) -> Any:
    return of_unit(s, s.item, "bms.high temperature")
