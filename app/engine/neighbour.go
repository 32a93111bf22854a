package engine

import (
	"context"
	"slices"

	"thawbook/app/winter"
)

// dayMonth is the question whether a file's dates are written day or month first.
const dayMonth = "day_month"

// askNeighbours answers what the files' contents leave open of the order of their dates, where others that are
// written the same way tell it by their content, and all of them alike. The error is the context's.
func (r reader) askNeighbours(ctx context.Context, all []File) error {
	orders := r.toldOrders(all)
	if len(orders) == 0 {
		return nil
	}
	return each(ctx, len(all), func(i int) {
		f := &all[i]
		order := orders[LayoutOf(f.Export)]
		if order == "" || holding(f.Export) != dayMonth {
			return
		}
		told := append(f.Remembered, winter.Answer{ID: dayMonth, Option: order, Layout: LayoutOf(f.Export)})
		*f = r.readWith(ctx, f.Name, with(answersFor(f.Name, r.answers), told), &meter{})
		f.Remembered = told
	})
}

// toldOrders is, by the mark of a layout, the order of dates that the content of files written so tells; "" where
// they tell different ones.
func (r reader) toldOrders(all []File) map[string]string {
	out := map[string]string{}
	for _, f := range all {
		if f.Export == nil || !f.Export.Layout.Clock.OrderCertain || slices.ContainsFunc(f.Remembered, func(a winter.Answer) bool { return a.ID == dayMonth }) || answersFor(f.Name, r.answers)[dayMonth] != "" {
			continue
		}
		layout, order := LayoutOf(f.Export), f.Export.Layout.Clock.Order
		if before, found := out[layout]; found && before != order {
			order = ""
		}
		out[layout] = order
	}
	return out
}
