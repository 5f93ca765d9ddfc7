"""Named engineering quantities of a fit-out, each computed when first asked."""

from __future__ import annotations

