"""One module a kind of spec; :mod:`speclint.specs` exports them all."""
