// Fields of an object type that stands inline, such as `{ temperature: Temperature }`, need no comment of their own:
// the comment of what they belong to describes them, and their flavour has the unit. Those of interfaces need one.

import { Converter, ReflectionKind } from "typedoc";

export function load(app) {
  app.converter.on(Converter.EVENT_RESOLVE_END, ({ project }) => {
    const inline = project
      .getReflectionsByKind(ReflectionKind.Property)
      .filter((field) => field.parent?.kindOf(ReflectionKind.TypeLiteral))
      // The list may hold only what would be complained of; below a parameter nothing is.
      .filter((field) => !field.hasComment() && !isBelowParameter(field))
      .map((field) => field.getFriendlyFullName());
    app.options.setValue("intentionallyNotDocumented", [...new Set(inline)]);
  });
}

function isBelowParameter({ parent }) {
  return parent !== undefined && (parent.kindOf(ReflectionKind.Parameter) || isBelowParameter(parent));
}
