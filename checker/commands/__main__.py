"""`python -m checker.commands` does what `fitout` does."""

from checker.commands import main

main()
