package analysis

// Band holds the limits of one quantity, in the unit of its rows: °C, or percent for humidity. A nil
// limit is none.
type Band struct{ GoodLow, GoodHigh, WatchLow, WatchHigh, ActLow, ActHigh *float64 }

// Bands are the safe bands of a barn.
type Bands struct{ TempC, RelHumPct Band }
