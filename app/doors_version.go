package main

import (
	"bufio"
	"fmt"
	"os"
	"runtime"
	"runtime/debug"
	"strings"

	"thawbook/analysis"
	"thawbook/app/desk"
)

// version prints what the figures were made by.
func (d door) version() int {
	p := program()
	fmt.Fprintf(d.stdout, "thawbook %s\nrules %d\ntzdata %s\n", p.Version, analysis.RulesVersion, p.TZData)
	return done
}

// program says which build this is and whose time zone rules it goes by.
func program() desk.Program { return desk.Program{Version: version(), TZData: tzData()} }

// version is the build's version and, where that does not name it, the commit it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	text := info.Main.Version
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && !strings.Contains(text, s.Value[:min(12, len(s.Value))]) {
			text += " " + s.Value
		}
	}
	return text
}

// zoneFolders are where package time looks for the system's zones before it takes those built in.
var zoneFolders = []string{"/usr/share/zoneinfo", "/usr/share/lib/zoneinfo", "/usr/lib/locale/TZ", "/etc/zoneinfo"}

// tzData is the edition of the time zone rules: the system's where it has them, else the ones built in.
func tzData() string {
	for _, folder := range zoneFolders {
		if _, err := os.Stat(folder); err != nil {
			continue
		}
		if edition := firstLine(folder + "/tzdata.zi"); strings.HasPrefix(edition, "# version ") {
			return strings.TrimPrefix(edition, "# version ") + " of the system"
		}
		return "of the system"
	}
	return "built in with " + runtime.Version()
}

// firstLine is a file's first line, or nothing.
func firstLine(path string) string {
	file, err := os.Open(path)
	if err != nil {
		return ""
	}
	defer file.Close()
	line, _ := bufio.NewReader(file).ReadString('\n')
	return strings.TrimSpace(line)
}
