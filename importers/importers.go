// Package importers turns the bytes of a logger's text file into exports: clock faces in file order,
// values in house units, remarks and open questions. The layout of a file is learned from its content
// alone. The package knows no barns, no zones beyond what the file says, and no neighbouring files.
package importers

import "thawbook/analysis/series"

// Export is one file as it was understood.
type Export struct {
	Name      string // as given by the caller; for messages and as the last resort for a logger's name
	Layout    Layout
	Rows      int // data lines, readable or not
	BadTime   int // data lines whose time could not be read
	Tables    int // tables below one another, each under its own header
	Series    []Series
	Remarks   []series.Remark
	Questions []Question

	least, most int // values a row gives to a column; 1 but where rows list runs or hours, or tables stand side by side
}

// Layout says how a file is written.
type Layout struct {
	Encoding      string // utf-8, utf-8-bom, utf-16le, utf-16be, windows-1252 and what else codings names
	Delimiter     string // "," ";" "\t" "|" or "blanks"
	DecimalMark   string // "." "," or "" when no number has a fraction
	FirstDataLine int    // 1-based physical line, 0 when there is none
	Header        string // the line that names the columns, "" when there is none
	Hours         []int  // 1-based columns that are hours of one series, which stands under the first
	Objects       bool   // the text is no plain table but objects, lines of names with their values, or rows cut otherwise than at the delimiter alone; columns are of the table made of it
	Clock         Clock
}

// Clock says where the time of a row stands and how it is written.
type Clock struct {
	Columns      []int  // 1-based
	Order        string // ymd, dmy, mdy, doy, week, epoch_s, epoch_ms, serial
	OrderCertain bool
	Zone         string // IANA name, ±hh:mm, or "" when the file does not say
	ZoneSource   string // file, answer, none
}

// Quantity is what a column measures, in the words of the data contract.
type Quantity string

// The quantities a column can be recognised as.
const (
	AirTemperature     Quantity = "air_temperature"   // °C
	RelativeHumidity   Quantity = "relative_humidity" // 0–1
	DewPoint           Quantity = "dew_point"         // °C
	AbsoluteHumidity   Quantity = "absolute_humidity"
	HumidityDeficit    Quantity = "humidity_deficit"
	VapourPressureDef  Quantity = "vapour_pressure_deficit"
	CO2                Quantity = "co2"
	Light              Quantity = "light"
	SurfaceTemperature Quantity = "surface_temperature" // °C
	State              Quantity = "state"               // 0 or 1
	Current            Quantity = "current"
	Power              Quantity = "power"
	Speed              Quantity = "speed" // of a fan or pump; in the file's unit, see FullSpeed
	Other              Quantity = "other"
)

// Series is one variable of one logger, in file order. FaceMS is the clock face read as if it were
// UTC, in milliseconds since 1970; where the row itself carries an offset or an epoch, FaceMS is the
// instant and Offsets say how far the printed face lies from it. Val is in house units (°C, 0–1);
// FaceMS and Val have the same length and hold only rows with a good time and a finite value.
type Series struct {
	Logger      string
	Column      string // header text, as it stands
	Variable    string // in a file of one value a row: the cell that names the value's variable
	ColumnIndex int    // 1-based
	Quantity    Quantity
	Unit        string // the file's: degC, degF, K, percent, fraction, ppm, …, "" when none
	UnitSource  string // header, units_row, column, values, answer
	FaceMS      []int64
	Val         []float64
	Instant     bool // FaceMS are instants (epochs, or rows that carry their offset)
	Offsets     []Offset
	Missing     int
	Unreadable  int
	OutOfOrder  int
	Decimals    int // digits after the decimal mark most often seen: the printed resolution

	summed *Summary // once the readings were let go
}

// Offset says how far the printed face lies from the instant, in milliseconds (face = instant + MS), from
// the reading with index From on. A series of epochs has none.
type Offset struct {
	From int
	MS   int64
}

// Question is something only the keeper can know.
type Question struct {
	ID      string // day_month, day_zero, year, first_day, quantity, zone, dst, temperature_unit, humidity_unit, decimal_mark, pairing
	Options []string
	Columns []string // what the columns are called that it is about, by number where they have no name; nil: all, or none
}

// Answers are the keeper's replies, by question id.
type Answers map[string]string

// Refusal is why a file could not be read at all. It is an error with one code, the place in the file
// where there is one (1-based, 0 when there is none) and the code's arguments.
type Refusal struct {
	Name         string
	Code         string
	Line, Column int
	Args         []string
}
