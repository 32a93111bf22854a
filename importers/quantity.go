package importers

import "strings"

// quantityNames say which quantity a column's name means: the first row with a phrase whose stems are all
// in the name wins. A stem with a star at its end is the beginning of a word, with stars at both ends a
// part of one. Rows of Other take names that would fall to a later row
// by mistake: the temperature of water is none of the air, nor is what is called for.
var quantityNames = []struct {
	quantity Quantity
	phrases  []string
}{
	{DewPoint, []string{"d 2 m", "tde 200*", "dew*", "dew* p*", "tdew", "*露点*", "*露點*", "*dewp*", "dwp*", "mdew", "dpt", "td", "*taupunkt*", "point* rosee", "rosee", "punto rocio", "rocio", "rugiada", "punkt* rosy", "rosn*", "daggpunkt*",
		"dugpunkt*", "duggpunkt*", "doggpunkt*", "kastepiste*", "kastepunkt*", "dauwpunt*", "rasos", "rasas", "orvalho", "harmatpont*", "точк* росы", "точк* роси", "оросяв*", "*이슬점*", "δροσου", "rosist*", "rosisc*", "roua", "daggarmark*", "ciy",
		"tdp", "t dp", "rosada", "tack* rose", "נקודת הטל", "*الندى*", "*شبنم*", "*นำคาง*", "diem suong", "titik embun", "*ओसाक*"}},
	{VapourPressureDef, []string{"vpd*", "vap* pres* def*", "vap* def*", "dampfdruckdefizit*"}},
	{HumidityDeficit, []string{"hum* def*", "hd", "*feuchtedefizit*", "*sattigungsdefizit*", "saturation def*"}},
	{AbsoluteHumidity, []string{"abs* hum*", "ah", "absolut* *feucht*", "abs* feucht*", "absfeucht*", "abs* *fukt*", "abs* kosteus*", "hum* abs*", "umid* ass*"}},
	{Other, []string{"wet* bulb*", "wetbulb*", "wetb*", "twb", "feuchtkugel*", "feuchttemp*", "vap* pres*", "heat* index*", "chill*", "windchill*", "feels*", "ressent*", "gefuhlt*", "opplevd*", "upplevd*", "percepit*", "percib*", "sensacion*", "apparent*", "humidex", "index*", "temp* hum* ind*", "thi", "tempo", "deadband*", "sp", "pid", "voltage*", "mode", "status*", "frost* p*", "frostpunkt*",
		"set* point*", "setpoint*", "limit*", "threshold*", "*grenz*", "schwelle*", "hysteres*", "delta*", "diff*", "offset*", "deviation*", "abweich*", "correction*", "korrektur*", "on temp*", "off temp*", "*einschalt*", "*ausschalt*", "*sollwert*", "soll", "solltemp*", "zieltemp*", "target*", "cpu", "board*", "battery*", "batt*",
		"mix* ratio*", "spec* hum*", "hum* ratio*", "albedo*", "color*", "colour*", "lat", "latitud*", "lon", "lng", "longitud*", "elev*", "altitud*", "attempt*", "trend*", "gradient*", "rate", "energ*", "mains*", "grid*", "netzfreq*", "power factor*", "cos phi", "reactive*", "blindleist*"}},
	{Other, []string{"twet*", "tw", "t wb", "t wet", "mwet", "*湿球*", "*濕球*", "*습구*", "zwilzon*", "bulb* umid*", "bulb* humed*", "mouille*", "natkugel*", "natt* bol*", "natbol*", "vat temp*", "vattemp*", "nedves* hom*", "смоч*", "змоч*", "влажн* термом*", "волог* термом*", "vlhk* teplom*", "mokr*", "markalampo*", "marg* termom*",
		"islak*", "υγρου θερμομ*", "*الرطبة*", "*เปยก*", "bau uot", "bola basah"}}, // of a wet bulb
	{Other, []string{"atemp", "app temp*", "utci", "odczuw*", "pocitov*", "ощущ*", "відчув*", "foles*", "tuntuva*", "tajutav*", "juntam*", "sajut*", "hoerzet*", "resimtit*", "obcut*", "osjecaj*", "hissedil*", "αισθητ*", "*体感*", "*體感*", "*체감*", "*รสก*", "cam nhan", "terasa", "sensac*", "gevoel*", "kanns*"}}, // as it is felt
	{Other, []string{"globe", "operative", "radiant", "sonic", "virtual", "anomal*", "departure*", "co2* slope*", "temp* change", "equilib* rh", "equilib* hum*", "brine", "refrigerant", "boiler", "dhw", "t flow", "t return", "tset", "t set", "desired"}},                                                       // none of the air as a thermometer shows it
	{Other, []string{"setpunkt*", "settpunkt*", "borvard*", "ingesteld*", "gewenst*", "consign*", "impost*", "zadan*", "nastaven*", "asetus*", "tavoite*", "seadistat*", "beallit*", "hedef*", "уставк*", "задан*", "*設定*", "*设定*", "*설정*"}},                                                                        // what is called for
	{AirTemperature, []string{"return air t*", "supply air t*", "air temp* above", "air temp* over", "air temp* near", "luftt* uber", "luftt* over"}},                                                                                                                                                               // whatever it is near to
	{RelativeHumidity, []string{"rel* hum* above", "rel* hum* over", "rel* hum* near", "air hum* above", "air hum* over", "air hum* near"}},
	{Other, []string{"water*", "wtmp*", "wtemp*", "sst", "*wasser*", "eau", "agua", "acqua", "vatten*", "vann", "vanntemp*", "vand", "vandtemp*", "vesi", "veden", "*vedenlampo*", "woda", "wody", "voda", "vody", "viz", "vizhom*", "вода", "воды", "води", "apei", "apa", "vode", "sjotemp*", "*水温*"}},
	{Other, pipeNames},
	{Other, []string{"soil*", "tsoil*", "tground*", "boden", "bodentemp*", "bodenfeucht*", "erdfeucht*", "wood", "holz", "holzfeucht*", "moist*", "sol", "suelo", "suolo", "solo", "bois", "madera", "madeira", "legno", "bodem*", "hout", "houtvocht*", "jord", "jordtemp*", "jordfukt*", "jordfugt*", "markfukt*", "marktemp*", "trafukt*", "trefukt*", "maan", "maaper*", "puun", "mulla*", "gleb*", "grunt*", "augsn*", "dirvozem*", "solului", "tla", "zemlj*", "drewn*", "pudy", "pudni", "dreva", "talaj*", "toprak*", "почв*", "грунт*", "ґрунт*", "древес*", "*土壌*", "*土壤*", "*토양*",
		"maalampo*", "pody", "podn*", "tal", "εδαφ*", "*קרקע*", "*التربة*", "*خاک*", "*地中*", "*지중*", "*ดน*", "tanah", "*मिटटी*", "jarðveg*", "*地面*", "*지면*", "*초상*", "t 10 n"}},
	{Other, []string{"*humidifi*", "*humidific*", "deumid*", "*befeuchter*", "*entfeuchter*", "avfukt*", "luftfukter*", "affugt*"}}, // machines
	{Other, []string{"precip*", "rain*", "snow*", "gust*", "km hr", "mm hr", "miles hr"}},                                           // of an hour, hr
	{Other, []string{"ammon*", "voc", "tvoc", "methan*", "ozon*", "radon*"}},                                                        // gases counted as carbon dioxide is
	{SurfaceTemperature, []string{"surf* t*", "*oberfl* *temp*", "*oberflachentemp*", "ts", "tsurf*", "pinta* *lampotil*", "pintalampo*", "yttemp*", "ytemp*", "superfic* temp*", "paroi temp*"}},
	{AirTemperature, []string{"t hr", "temp* hr"}}, // of the hour
	{RelativeHumidity, []string{"rh*", "ure 200*", "r h", "r f", "u r", "h r", "rel f", "relh*", "rel* hum*", "rel* *feucht*", "rel* *fukt*", "rel* *fugt*", "rel* *kosteus*", "*kosteuden*", "rel* *niisk*", "rel* humed*", "rel* umid*", "rel* *vocht*", "rel* vlh*", "rel* vla*", "*humid*", "rhum", "hum", "humi", "hygro*", "hmd", "hmdty*", "rhu", "nem", "hr", "rf", "rlf", "lf", "luftf", "vocht", "rv", "ur", "*feucht*", "*fukt*", "*fugt*", "*kosteus*",
		"*niiskus*", "mitrum*", "dregm*", "wilg", "wilgot*", "vlhk*", "vlaz*", "vlag*", "*vochtig*", "humed*", "umid*", "paratart*", "влажн*", "υγρασ*", "*湿度*", "*濕度*", "*습도*", "*رطوبة*", "*לחות*", "*ความชน*", "do am", "kelemba*", "*आरदरता*", "*رطوبت*", "волог*", "dregn*", "rakast*", "hrmed*", "umi", "umezeal*", "*溼度*"}},
	{AirTemperature, []string{"t", "tre 200*", "tt", "ttt", "tl", "tmean", "tavg", "tmed", "tmpc", "tmpf", "tempc", "tempf", "tem", "air tc", "air tf", "te", "ti", "ta", "tair", "tmp", "*temp*", "*lampotil*", "lampo*", "teplot*", "*homersek*",
		"*homers*", "sicaklik*", "темпер*", "темп", "θερμοκρ*", "*温度*", "*溫度*", "*氣溫*", "*気温*", "*气温*", "*온도*", "*기온*", "*حرارة*", "*तापमान*", "*טמפרטורה*", "*อณหภม*", "nhiet*", "suhu*", "*دما*", "drybulb*", "dry* bulb*", "hitast*", "atmp", "airt", "tas", "tdb"}},
	{CO2, []string{"co2*", "carbon* dioxid*", "kohlendioxid*", "*koldioxid*", "hiilidioksid*", "susihappegaas*"}},
	{Light, []string{"light*", "lux", "lx", "illum*", "licht*", "*helligkeit*", "beleucht*", "ljus*", "lys*", "valo", "valon", "valois*", "valaist*", "valgus*", "lumin*", "luz"}},
	{Current, []string{"current*", "amp", "amps", "ampere*", "strom", "courant*", "corriente*", "corrente*"}},
	{Power, []string{"power*", "leistung*", "watt", "watts", "effekt*", "puissance*", "potencia*", "teho*", "voimsus*"}},
	{Speed, []string{"speed*", "drehzahl*", "frequen*", "vitesse*", "velocid*", "varvtal*", "turtall*", "kierrosluku*", "pyorimisnopeus*", "fan*", "*lufter*", "*ventilator*", "ventilation*", "*luftung*", "stage*", "puhallin*", "vifte*", "flakt*"}},
	{Other, []string{"rain*", "precip*", "wind*", "gust*", "pres*", "baro*", "weight*", "mass", "level*", "ph", "direct*", "radiat*", "solar*", "uv*", "snow*", "counter*", "*druck*", "regen*", "niederschlag*", "neerslag*", "gewicht*", "schnee*", "pluie*", "poids", "lluvia*", "presion*", "neige*", "sade*", "nederbord*", "nedbor*", "tryk*", "vekt", "vikt", "rssi", "snr", "lqi", "signal*", "uptime*", "people", "hive weight*", "noise*", "sound*", "pm", "dust*", "oxygen*", "o2", "nh3", "h2s", "ch4", "flow*", "volume*", "distance*", "count*", "bees*", "acc*", "axis*", "minute*", "minut*", "duration*", "laufzeit*", "dauer*", "runtime*"}}, // of no use here
}

// otherThings are what a temperature may be of instead of the air where a column beside it is the air's by its name; alone
// they may as well be places: the rock barn, the shed at the lake.
var otherThings = []string{"ground*", "canopy*", "leaf", "leaves", "skin", "rock*", "glass", "slab", "panel*", "module*", "pv", "pavement", "asphalt", "concrete", "sand", "litter", "grass*", "bark", "stem", "trunk", "root*", "substrate", "compost", "fruit", "body", "pipe*", "tank*", "radiator*", "sea", "lake", "stream", "river", "sky", "potential", "frost",
	"blatt*", "fels*", "rohr*", "gras*", "beton*", "becken*", "ror", "hoja*", "roca*", "tuberia*", "impulsion", "retorno", "feuille*", "depart", "retour", "rocher*", "lisc*", "depth*", "tiefe*", "profond*",
	"rortemp*", "rorlednin*", "putki*", "putken", "rura", "rury", "rurze", "trubk*", "trubce", "potrub*", "leiding*", "buis*", "tubo", "tubazion*", "tuyau*", "труб*", "toru", "torutemp*", "cso", "csohom*", "boru*"}

// pipeNames are of what goes to a heating and comes back from it: water, unless a humidity bears the same name.
var pipeNames = []string{"vorlauf*", "rucklauf*", "flow temp*", "supply temp*", "supply t", "return temp*", "return t", "framledning*", "returledning*", "fremlob*", "turledning*", "tillopp*", "tillop*", "retur", "returtemp*", "turtemp*", "aanvoer*", "menoves*", "paluuves*",
	"temp* mandata", "temp* ritorno", "temp* impulsion", "temp* retorno", "temp* depart", "temp* retour", "t mandata", "t ritorno", "t impulsion", "t retorno", "t depart", "t retour", "zasilan*", "powrot*", "privodn*", "vratn*", "zpatec*", "подач*", "обратк*"}

// airWords say that a temperature is the air's.
var airWords = []string{"air", "ambient*", "ambiant*", "umgebung*", "dry", "tair", "ta", "luft*", "lufttemp*", "aire", "aria", "ar", "lucht*", "vzduch*", "powietrz*", "ilma*", "hava*", "воздух*", "повітр*"}

// humidityInitials stand for humidity where the unit is percent.
var humidityInitials = wordSet("r", "u", "uu", "h", "fi", "φ", "ϕ")

// quantityUnits say what a unit alone gives away where the name says nothing.
var quantityUnits = map[string]Quantity{
	"degC": AirTemperature, "degF": AirTemperature, "ppm": CO2, "lux": Light, "A": Current, "mA": Current, "W": Power, "kW": Power, "Hz": Speed, "rpm": Speed, "%RH": RelativeHumidity,
}

// stateNames are the stems of columns that record whether something is on or open.
var stateNames = []string{"state*", "status*", "on", "off", "fan*", "stage*", "relay*", "relais*", "heater*", "heat*", "door*", "contact*", "kontakt*", "output*", "switch*",
	"*lufter*", "*luftung*", "offen", "tor", "gate*", "klappe*", "*ventil*", "geblase*", "heiz*", "flakt*", "vifte*", "puhallin*", "tila", "olek", "zustand*", "tur", "ovi", "uks", "pump*", "alarm*", "running", "open", "motor*", "vent*", "event*", "ereignis*", "run", "light*", "licht*", "lamp*", "occup*", "presence*", "motion*", "bewegung*"}

// contactNames are the stems of columns that are states even though they name a quantity too (high temp alarm).
var contactNames = []string{"alarm*", "fail*", "fault*", "door*", "contact*", "kontakt*", "relay*", "relais*", "switch*", "state", "status"}

// flagNames are the stems of columns that grade other columns.
var flagNames = []string{"*flag*", "qc", "qa", "qf", "qn", "q", "quality*", "*qualitat*", "*品质*", "*品質*", "*質量*", "*质量*", "*均質*", "*現象なし*", "*플래그*", "valid*", "gultig*", "ok", "attribute*"}

// codeNames are the stems of columns that say in signs how another column's values came about.
var codeNames = []string{"code*", "type*", "source*", "symbol*", "remark*", "comment*", "sensor*", "id"}

// indexNames are the stems of columns that count the rows.
var indexNames = []string{"no", "nr", "n", "id", "index*", "idx", "record*", "rec", "row*", "entry", "lfd", "obs*", "sample*", "count*", "zeile*", "num", "number*", "seq*", "rownames", "rn", "satz*", "reading*"}

// deviceNames are the stems of columns that say which logger a row is from.
var deviceNames = []string{"device*", "logger*", "sensor*", "station*", "stasjon*", "stacja*", "estacion*", "stazione*", "asema", "havaintoasema*", "jaam", "stanice*", "stn", "poste", "origin", "serial*", "probe*", "node*", "host", "site*", "name", "id", "gerat*", "*messstelle*", "messort*", "standort*",
	"location*", "building*", "gebaude*", "greenhouse*", "ort", "place*", "anturi*", "koht*", "andur*", "capteur*", "sonde*", "zone", "room*", "raum*", "barn*", "shed*", "house*", "channel*", "kanal*", "unit", "beacon*", "tag", "entity*", "thing*", "object*", "item*", "instrument*", "cabinet*", "box", "source*", "mac", "imei", "eui", "deveui"}

// identifiers are the words in the name of a column that identifies something, and the same in all rows.
var identifiers = []string{"id", "uid", "uuid", "code", "key", "account*"}

// numberedNames are the other words in the name of a column that tells loggers apart by numbers: with any other word a
// number beside a logger's name is one of its values (sensor voltage, people in the room).
var numberedNames = []string{"id", "ids", "no", "nr", "num", "number", "nummer*", "numero*", "code*", "addr*", "adress*", "mac", "serial*", "sn", "s", "key", "index", "label*", "uid", "name*", "ch", "port*", "wmo", "wban", "seriennr", "kennung", "of", "the"}

// conditionNames are the stems of columns that say in words how a logger does.
var conditionNames = []string{"status*", "state*", "health*", "mode*", "alarm*", "zustand*", "quality*", "batt*", "condition*", "type*"}

// clockNames are the stems of columns that hold a time.
var clockNames = []string{"time*", "*timestamp*", "date*", "datum*", "*zeit*", "epoch*", "unix*", "ts", "heure*", "hora*", "fecha*", "data", "ora", "tid", "klockslag*", "aika*", "aeg", "kell*", "klo", "kl", "*日時*", "*日付*", "*時刻*", "*時間*", "*时间*", "*日期*", "*시간*", "*날짜*", "*일시*", "*время*", "дата*", "*час*",
	"kellonaika*", "tijd*", "cas", "czas*", "laikas", "laiks", "pvm", "paiva*", "kuupaev*", "when", "utc", "gmt", "godz*", "hodin*", "ido", "clock*", "stamp*", "serial*"}

// partNames are the names of columns that hold one part of a time, year to second.
var partNames = [6][]string{
	{"year", "yyyy", "yy", "yr", "jahr", "annee", "ano", "anno", "ar", "vuosi", "aasta"},
	{"month", "mnth", "mo", "mon", "mm", "monat", "mois", "mes", "mese", "manad", "kuukausi", "kk", "kuu"},
	{"day", "dd", "da", "dy", "tag", "jour", "dia", "giorno", "dag", "paiva", "pv", "paev"},
	{"hour", "hr", "hh", "h", "std", "stunde", "heure", "hora", "ora", "godz", "godzina", "hodina", "timme", "time", "tunti", "tund", "uur", "saat", "ura", "stundas", "valanda", "hod", "час", "時", "时", "시"},
	{"minute", "minutes", "min", "mi", "mn", "mm", "m", "minuut", "minuutti", "minut"},
	{"second", "seconds", "sec", "ss", "s", "sekunde", "sekund", "sekunti"},
}

// quantityOf says what a column measures by its name and unit, and which words of the name said so.
func quantityOf(name []nameWord, unit string) (q Quantity, used []bool) {
	used = make([]bool, len(name))
	for _, row := range quantityNames {
		matched := false
		for _, p := range row.phrases {
			matched = phraseMatches(p, name, used) || matched
		}
		if matched && unitFits(row.quantity, unit) {
			return row.quantity, used
		}
		clear(used)
	}
	if q, ok := quantityUnits[unit]; ok {
		return q, used
	}
	return Other, used
}

// IsLight says whether a series tells light from dark: by its quantity, or as states under a name of light.
func (s Series) IsLight() bool {
	if s.Quantity != State {
		return s.Quantity == Light
	}
	q, _ := quantityOf(words(s.Column), "")
	return q == Light
}

// IsRecord says whether a series shows when something ran: as states, or by what it drew or how fast it turned.
func (s Series) IsRecord() bool {
	switch s.Quantity {
	case State, Current, Power, Speed:
		return !s.IsLight()
	}
	return false
}

// quantityUnitSets are the units a quantity can have; a name with another unit means something else. Quantities
// without a row take any.
var quantityUnitSets = map[Quantity]string{
	AirTemperature: "degC degF K", DewPoint: "degC degF K", SurfaceTemperature: "degC degF K", RelativeHumidity: "percent fraction %RH",
	CO2: "ppm percent", Current: "A mA", Power: "W kW", Speed: "percent Hz rpm",
}

// unitFits says whether a quantity can have a unit; only speed must have one, for without it wind has a speed too.
func unitFits(q Quantity, unit string) bool {
	owner, owned := quantityUnits[unit]
	set, bound := quantityUnitSets[q]
	if owned && !bound && owner != q {
		return q == Other && owner != Current && owner != Power // a water pump's watts are power
	}
	return unit == "" && q != Speed || !bound || strings.Contains(" "+set+" ", " "+unit+" ")
}

// isTemperature says whether the house unit of a quantity is °C.
func isTemperature(q Quantity) bool {
	return q == AirTemperature || q == DewPoint || q == SurfaceTemperature
}
