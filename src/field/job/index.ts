export { commission, tryCommission } from "./commission.js";
export * from "./job.js";
export type { LogColumn, LogTable } from "./log.js";
export { recordAsMarkdown } from "./print-markdown.js";
export { recordAsText } from "./print-text.js";
export { logsOf, readJob, tryReadJob } from "./read-job.js";
export * from "./record.js";
