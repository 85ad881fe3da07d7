import { h } from "../dom.js";
import { chooseLog } from "../main.js";

const KINDS = { picture: "a picture", workbook: "a workbook or an archive", record: "a batch record; hand it in together with its log" };

export function strangeScreen(page) {
  const { file, fault } = page.strange ?? {};
  return {
    title: () => "Not read",
    node: h("div", {}, h("div", { class: "question" },
      h("h1", {}, file ? "This is neither a log nor a report" : fault?.kind === "stopped" ? "Holdproof has been closed" : "This could not be done"),
      h("p", { class: "lead" }, file ? [h("strong", {}, file.name), " is ", KINDS[file.kind] ?? "something else", ". A log is a text file with one reading a row; a report is a PDF sealed by Holdproof."] : fault?.message ?? "Nothing is known of it.")),
      file ? h("div", {}, h("h2", {}, "What helps"), h("p", {}, "Export the log from the logger’s own program as CSV. A spreadsheet can save as CSV too."), h("p", { class: "soft" }, "Nothing was kept of the file.")) : "",
      h("p", { class: "row" }, h("button", { class: "act", id: "another", onclick: chooseLog }, "Choose another file"))),
  };
}
