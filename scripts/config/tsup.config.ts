import { defineConfig, type Options } from "tsup";

const library: Options = {
  entry: ["src/index.ts", "src/core.ts", "src/fluids/*.ts", "src/blends/*.ts"],
  tsconfig: "scripts/config/tsconfig.build.json",
  target: "es2022",
  platform: "neutral",
  sourcemap: true,
  // `npm run build` empties dist; left to tsup, one format could delete the other's files.
  clean: false,
  // Shared chunks in both formats: each entry would otherwise carry its own copy of the error classes.
  splitting: true,
  // tsup 8.5 hands the compiler a baseUrl, which TypeScript 6 calls deprecated.
  dts: { compilerOptions: { ignoreDeprecations: "6.0" } },
};

export default defineConfig([
  { ...library, format: "esm" },
  // Without `treeshake`, CommonJS goes through a second rewriter and can hardly be read.
  { ...library, format: "cjs", treeshake: true },
]);
