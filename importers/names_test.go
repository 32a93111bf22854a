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
			"湿球温度", "습구온도", "Temperatura termometru zwilżonego", "Temperatura bulbo umido", "Temperatura de bulbo húmedo", "Température du thermomètre mouillé", "Natte bol temperatuur", "Температура смоченного термометра", "Teplota vlhkého teploměru", "Märkälämpötila", "Twet(C)", "T_wb [C]",
			"体感温度", "체감온도", "Temperatura odczuwalna", "Pocitová teplota", "Ощущаемая температура", "Gevoelstemperatuur", "Føles som temperatur", "Sensação térmica temperatura", "atemp",
			"地面温度(°C)", "지면온도", "지중온도", "地中温度", "Температура почвы", "Temperatura tal", "Θερμοκρασία εδάφους", "טמפרטורת קרקע",
			"Globe temperature", "Operative temperature", "Sonic temperature", "Temperature anomaly", "Brine temp", "Boiler temp", "T_flow [°C]", "T_return [°C]", "Equilibrium RH", "Valor", "Valore", "ValorObservado",
		},
		AirTemperature:   {"Return air temp", "Innentemperatur", "Temperatura wewnętrzna", "Sisälämpötila", "Teplota venkovní", "Температура в помещении", "Hitastig", "温度", "온도", "AIRT", "tas", "Tdb", "slope_Tair_2m"},
		Light:            {"Valoisuus", "Valo", "Valaistus"},
		RelativeHumidity: {"Luftfeuchte", "Humidité de l'air", "Humedad relativa", "Luftfuktighet", "Luftfugtighed", "Ilmankosteus", "Vlhkost", "Влажность воздуха", "Вологість", "Luchtvochtigheid", "Wilgotność powietrza", "Rakastig", "습도", "Umi. Ins. (%)", "Umezeala relativă (%)", "相對溼度(%)"},
		DewPoint:         {"Точка росы", "Точка роси", "Rosný bod", "Duggpunkt", "Kastepiste", "Punto de rocío", "Σημείο δρόσου", "Punt de rosada", "Tačka rose", "נקודת הטל", "نقطة الندى", "نقطه شبنم", "จุดน้ำค้าง", "Điểm sương", "Titik embun", "ओसांक", "Tdp"},
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

// A temperature of something that may as well be a place is none of the air where another column is the air's by its name.
func TestTemperaturesOfOtherThings(t *testing.T) {
	rows := "\n2026-01-13 00:00,4.5,3.5,80\n2026-01-13 01:00,4.0,3.0,81\n"
	for header, want := range map[string]Quantity{
		"Time,Air temp °C,Rock temp °C,RH %":             Other,
		"Time,Lufttemperatur °C,Rohrtemperatur °C,RH %":  Other,
		"Time,T °C,T_canopy °C,RH %":                     Other,
		"Time,Hill barn temp °C,Rock barn temp °C,RH %":  AirTemperature,
		"Time,Air temp °C,Air temp rock barn °C,RH %":    AirTemperature,
		"Time,Air temp °C,Shed at the lake temp °C,RH %": Other, // told in the window's list of columns, and mended there
	} {
		for _, s := range readText(t, header+rows).Series {
			if s.ColumnIndex == 3 && s.Quantity != want {
				t.Errorf("%s: %s, want %s", header, s.Quantity, want)
			}
		}
	}
}

// Highest and lowest are words of every language, beside what they are the highest and lowest of.
func TestExtremesInOtherLanguages(t *testing.T) {
	for _, names := range [][3]string{
		{"気温(°C)", "最高気温(°C)", "最低気温(°C)"}, {"기온(°C)", "최고기온(°C)", "최저기온(°C)"}, {"Temperatura °C", "Temperatura massima °C", "Temperatura minima °C"},
		{"Temperatur °C", "Maxtemperatur °C", "Mintemperatur °C"}, {"Температура °C", "Макс. температура °C", "Мин. температура °C"}, {"טמפרטורה °C", "טמפרטורת מקסימום °C", "טמפרטורת מינימום °C"},
	} {
		in := "Time," + names[0] + "," + names[1] + "," + names[2] + "\n2026-01-13 00:00,4.5,5.5,3.5\n2026-01-13 01:00,4.0,5.0,3.0\n"
		air := 0
		for _, s := range readText(t, in).Series {
			air += one(s.Quantity == AirTemperature)
		}
		if air != 1 {
			t.Errorf("%v: %d columns of air", names, air)
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
