package importers

import (
	"context"
	"strings"
	"testing"
)

// What the keeper says goes before the header: 39.2 °F is 4 °C (× 9/5 + 32), 41 °F is 5 °C, 4 K above 273.15 is 277.15 K.
func TestWhatIsSaidGoesBeforeTheHeader(t *testing.T) {
	const one = "time,temp (°C),RH (%)\n2026-01-13 10:00,39.2,80\n2026-01-13 10:10,41.0,81\n"
	const two = "time,North temp (°C),North RH (%),South temp (°C),South RH (%)\n2026-01-13 10:00,39.2,80,4.5,70\n2026-01-13 10:10,41.0,81,4.0,71\n"
	const crossed = "time,temp (°C),RH (%)\n2026-01-13 10:00,80,4.5\n2026-01-13 10:10,81,4.0\n"
	for _, c := range []struct {
		in      string
		answers Answers
		want    string
	}{
		{one, nil, "f air_temperature 39.2..41|f relative_humidity 0.8..0.81"},
		{one, Answers{"temperature_unit": "degF"}, "f air_temperature 4..5|f relative_humidity 0.8..0.81"},
		{two, Answers{"temperature_unit": "degF:2"}, "North air_temperature 4..5|North relative_humidity 0.8..0.81|South air_temperature 4..4.5|South relative_humidity 0.7..0.71"},
		{strings.NewReplacer("39.2", "277.15", "41.0", "278.15").Replace(one), Answers{"temperature_unit": "K:2"}, "f air_temperature 4..5|f relative_humidity 0.8..0.81"},
		{crossed, Answers{"swapped": "2+3"}, "f relative_humidity 0.8..0.81|f air_temperature 4..4.5"},
		{crossed, Answers{"swapped": "2+9"}, "f air_temperature 80..81|f relative_humidity 0.04..0.045"},
		{strings.Replace(strings.ReplaceAll(two, "39.2,80", "80,39.2"), "41.0,81", "81,41.0", 1), Answers{"swapped": "2+3", "temperature_unit": "degF:3"},
			"North relative_humidity 0.8..0.81|North air_temperature 4..5|South air_temperature 4..4.5|South relative_humidity 0.7..0.71"},
	} {
		e, err := Read(context.Background(), strings.NewReader(c.in), "f.csv", c.answers)
		if err != nil || len(e.Questions)+len(e.Remarks) > 0 {
			t.Fatalf("%v: %v, %+v", c.answers, err, e)
		}
		if got := seriesLevels(e); got != c.want {
			t.Errorf("%v: got\n%s\nwant\n%s", c.answers, got, c.want)
		}
	}
	for question, answers := range map[string][]string{"temperature_unit": {"F", "degF:", "degF:a", "degF:2,3", "degF:-2", "degF:2:x"}, "swapped": {"2", "2+3+4", "-2+3", "2+3:x", "yes"}} {
		for _, answer := range answers {
			e, err := Read(context.Background(), strings.NewReader(one), "f.csv", Answers{question: answer})
			if err != nil || len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkNoAnswer {
				t.Errorf("%s=%s: %v", question, answer, e)
			}
		}
	}
}

// seriesLevels are an export's series with their lowest and highest value.
func seriesLevels(e *Export) string {
	var out []string
	for _, s := range strings.Split(said(e), "|") {
		f := strings.Fields(s)
		out = append(out, f[0]+" "+f[1]+" "+f[len(f)-1])
	}
	return strings.Join(out, "|")
}
