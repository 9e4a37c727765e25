// The title block on top of the page: the fields of ISO 7200 as a form that edits the notebook's front matter.

import { useState } from "preact/hooks";
import { statuses, type TitleField } from "../../engine/notebook/index.ts";
import type { Desk, DeskState } from "./desk.ts";

interface Field {
  readonly name: TitleField;
  readonly label: string;
  readonly empty: string;
}

const FIELDS: readonly Field[] = [
  { name: "title", label: "Title", empty: "add" },
  { name: "project", label: "Project", empty: "add" },
  { name: "number", label: "Number", empty: "add" },
  { name: "revision", label: "Rev.", empty: "add" },
  { name: "status", label: "Status", empty: "add" },
  { name: "owner", label: "Legal owner", empty: "add" },
  { name: "creator", label: "Creator", empty: "add" },
  { name: "checker", label: "Checker", empty: "not yet" },
  { name: "approval_person", label: "Approval", empty: "not yet" },
  { name: "date", label: "Date of issue", empty: "not issued" },
];

export function TitleBlock({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  return (
    <section class="title-block" aria-label="Title block">
      {FIELDS.map((field) => (
        <TitleCell key={field.name} field={field} value={state.title[field.name]} onEdit={(value) => desk.editTitle(field.name, value)} />
      ))}
    </section>
  );
}

function TitleCell({ field, value, onEdit }: { readonly field: Field; readonly value: string; readonly onEdit: (value: string) => void }) {
  // While the field has the focus it shows what is typed; the front matter trims and quotes on its own.
  const [typed, setTyped] = useState<string | undefined>(undefined);
  return (
    <label class={`title-cell title-${field.name.replace("_", "-")}`}>
      <span class="title-label">{field.label}</span>
      <input
        type="text"
        autocomplete="off"
        spellcheck={false}
        placeholder={field.empty}
        list={field.name === "status" ? "statuses" : undefined}
        value={typed ?? value}
        onInput={(event) => {
          setTyped(event.currentTarget.value);
          onEdit(event.currentTarget.value);
        }}
        onBlur={() => setTyped(undefined)}
      />
      {field.name === "status" && (
        <datalist id="statuses">
          {statuses.map((status) => (
            <option key={status} value={status} />
          ))}
        </datalist>
      )}
    </label>
  );
}
