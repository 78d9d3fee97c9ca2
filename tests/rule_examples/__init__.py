"""Of each rule an example that holds and a change that breaks it: found in ``example_specs``, written, and proved."""
