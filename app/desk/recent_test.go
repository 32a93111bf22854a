package desk

import "testing"

// 1 762 963 200 s are 20 404 days of 86 400 s, to 12 November 2025, and 57 600 s, to 16:00.
func TestRecentWintersInWords(t *testing.T) {
	got := RecentsOf([]Recent{{Path: "/w/alder.thawbook", Name: "Alder", At: 1762963200000}, {Path: "/d/x.thawbook", Name: "New winter", At: 1762963200000, Draft: true}}, Units{})
	for i, want := range []RecentView{
		{"/w/alder.thawbook", "Alder", "alder.thawbook, opened 12 November 2025 16:00"},
		{"/d/x.thawbook", "New winter", "not saved under a name yet, opened 12 November 2025 16:00"},
	} {
		if got[i] != want {
			t.Errorf("%+v, want %+v", got[i], want)
		}
	}
}
