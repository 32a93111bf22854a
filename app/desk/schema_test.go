package desk_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"thawbook/assets"
)

// holdTo checks output against one of the project's JSON Schemas with a general-purpose validator.
func holdTo(t *testing.T, name string, value any) {
	t.Helper()
	raw, err := assets.Schemas.ReadFile("schema/" + name)
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(name, document); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	back, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(back); err != nil {
		t.Errorf("%v\n%s", err, text)
	}
}
