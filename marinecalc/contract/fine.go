package contract

import "github.com/santhosh-tekuri/jsonschema/v5"

// fine tells whether a value keeps to its schema, and nothing of what is wrong
// where it does not. It goes through objects and lists by itself, as far as
// nothing is said of them but what their members are, which must be there, and
// how many entries they have; each text and number goes to the validator. On
// objects the validator spends most of its time on names and pointers for
// errors that there mostly are none of.
func fine(s *jsonschema.Schema, v any) bool {
	switch v := v.(type) {
	case map[string]any:
		if isPlain(s, "object") && s.AdditionalProperties == false {
			return fineMembers(s, v)
		}
	case []any:
		if isPlain(s, "array") && s.Items2020 != nil && s.AdditionalProperties == nil && s.Properties == nil && s.Required == nil {
			return fineEntries(s, v)
		}
	}
	return s.Validate(v) == nil
}

func fineMembers(s *jsonschema.Schema, object map[string]any) bool {
	for name, v := range object {
		if member, known := s.Properties[name]; !known || !fine(member, v) {
			return false
		}
	}
	for _, name := range s.Required {
		if _, has := object[name]; !has {
			return false
		}
	}
	return true
}

func fineEntries(s *jsonschema.Schema, list []any) bool {
	if len(list) < s.MinItems || s.MaxItems >= 0 && len(list) > s.MaxItems { // -1 is no bound
		return false
	}
	for _, v := range list {
		if !fine(s.Items2020, v) {
			return false
		}
	}
	return true
}

// isPlain tells that a schema allows one type and uses no keyword but those
// that fine knows.
func isPlain(s *jsonschema.Schema, kind string) bool {
	return len(s.Types) == 1 && s.Types[0] == kind &&
		s.Always == nil && s.Ref == nil && s.RecursiveRef == nil && s.DynamicRef == nil &&
		s.Format == "" && len(s.Constant) == 0 && len(s.Enum) == 0 && len(s.Extensions) == 0 &&
		s.Not == nil && len(s.AllOf) == 0 && len(s.AnyOf) == 0 && len(s.OneOf) == 0 && s.If == nil &&
		s.MinProperties == -1 && s.MaxProperties == -1 && s.PropertyNames == nil && !s.RegexProperties &&
		len(s.PatternProperties) == 0 && len(s.Dependencies) == 0 && len(s.DependentRequired) == 0 && len(s.DependentSchemas) == 0 &&
		s.UnevaluatedProperties == nil && s.UnevaluatedItems == nil &&
		!s.UniqueItems && s.Items == nil && s.AdditionalItems == nil && len(s.PrefixItems) == 0 && s.Contains == nil
}
