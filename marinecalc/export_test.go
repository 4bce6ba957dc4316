package marinecalc

import "reflect"

// ReplyType is the type of what Call writes.
var ReplyType = reflect.TypeFor[reply]()
