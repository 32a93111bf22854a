package importers

import "testing"

// What names of columns mean is what a dictionary says of their words: the temperature of water, soil or a set value is
// none of the room's air, wood's and soil's moisture is no humidity of it, and machines that change humidity have none.
func TestNames(t *testing.T) {
	for quantity, names := range map[Quantity][]string{
		Other: {
			"Water temp (°C)", "Wassertemperatur", "Temperatur Kühlwasser", "Feuchttemperatur", "Température de l'eau", "Temperatura del agua", "Temperatura acqua", "Vanntemperatur", "Vattentemperatur", "Veden lämpötila", "Teplota vody", "Температура воды", "Temperatura wody", "Watertemperatuur",
			"Soil humidity %", "Bodenfeuchte", "Humidité du sol", "Humedad del suelo", "Umidità suolo", "Jordfuktighet", "Markfuktighet", "Maan kosteus", "Vlhkost půdy", "Влажность почвы", "Wilgotność gleby", "Temperatura gruntu", "Augsnes mitrums", "Dirvožemio drėgmė", "Umiditatea solului", "Temperatura apei", "Vlažnost tla", "Вологість ґрунту", "Sjøtemperatur", "Bodemvochtigheid",
			"Holzfeuchte", "Umidità legno %", "Trefuktighet",
			"Temp setpoint", "Température consigne", "Temperatura de consigna", "Börvärde temperatur", "Setpunkt temperatur", "Asetuslämpötila", "Žádaná teplota", "Ingestelde temperatuur", "Zieltemperatur", "Target humidity",
			"Vorlauftemperatur", "Framledningstemperatur", "Fremløbstemperatur", "return temp", "flow temp",
			"Temp-Humidity Index", "Humidity index", "Hum Ratio", "Temp sensor status", "Humidity sensor voltage", "Temp deadband", "Temp control mode", "Tempo (s)", "Gefühlte Temperatur", "Température ressentie", "Opplevd temperatur", "Upplevd temperatur", "Temperature trend", "CO2 slope", "Attempts", "Humidifier", "Luftentfeuchter", "Power factor", "Reactive power (var)", "Energy (kWh)", "Lighting energy kWh", "NH3 ammonia (ppm)", "TVOC (ppm)",
		},
		AirTemperature:   {"Return air temp", "Innentemperatur", "Temperatura wewnętrzna", "Sisälämpötila", "Teplota venkovní", "Температура в помещении", "Hitastig", "温度", "온도"},
		RelativeHumidity: {"Luftfeuchte", "Humidité de l'air", "Humedad relativa", "Luftfuktighet", "Luftfugtighed", "Ilmankosteus", "Vlhkost", "Влажность воздуха", "Вологість", "Luchtvochtigheid", "Wilgotność powietrza", "Rakastig", "습도"},
		DewPoint:         {"Точка росы", "Точка роси", "Rosný bod", "Duggpunkt", "Kastepiste", "Punto de rocío", "Σημείο δρόσου"},
		Power:            {"Lighting power (W)", "Dehumidifier (W)", "Water pump (W)", "heater_kW"},
		Current:          {"fan_mA", "Battery current (mA)", "Fan 2 (A)"},
	} {
		for _, name := range names {
			c := column{header: name}
			c.describe(nil)
			if c.quantity != quantity {
				t.Errorf("%s: %s, want %s", name, c.quantity, quantity)
			}
		}
	}
}

// A number beside a word for a logger is its name only where nothing else is said of it.
func TestNamesOfLoggers(t *testing.T) {
	for name, want := range map[string]bool{"sensor_id": true, "Station no.": true, "Channel": true, "node address": true, "Logger serial number": true,
		"Room occupancy count": false, "station_pressure": false, "sensor voltage": false, "node_rssi": false, "Zone status": false} {
		if got := namesDevice(words(name), true); got != want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
