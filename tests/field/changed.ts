/** The same object with some members replaced; methods keep their own `this`, so private fields go on working. */
export function changed<T extends object>(original: T, replaced: Partial<T>): T {
  return new Proxy(original, {
    get(target, key) {
      if (Object.hasOwn(replaced, key)) return Reflect.get(replaced, key);
      const value: unknown = Reflect.get(target, key, target);
      return typeof value === "function" ? value.bind(target) : value;
    },
  });
}
