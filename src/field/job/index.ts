export { commission, tryCommission } from "./commission.js";
export * from "./form/job.js";
export { recordAsMarkdown } from "./print/print-markdown.js";
export { recordAsText } from "./print/print-text.js";
export type { LogColumn, LogTable } from "./read/log.js";
export { logsOf, readJob, tryReadJob } from "./read/read-job.js";
export * from "./record/record.js";
