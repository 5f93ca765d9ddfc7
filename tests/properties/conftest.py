"""Settings of the property tests: what fails is shown as found, since every case is a whole review."""

from __future__ import annotations

from hypothesis import Phase, settings

settings.register_profile("whole designs", settings.get_profile("fitout"), phases=[Phase.explicit, Phase.generate])
settings.load_profile("whole designs")
