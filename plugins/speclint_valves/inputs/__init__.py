"""What several rules of valves share: the train, loads, flow areas and fits."""
