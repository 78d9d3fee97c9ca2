"""Tables and formulae that any family may call. No rule lives here and no spec is read here."""
