import type { NewLayout } from '../../server/contract/layouts.ts';
import type { Problem } from '../../server/contract/values.ts';
import { editorWords } from '../words/editor.ts';
import { words } from '../words/words.ts';
import { layerCalled } from './layer-names.ts';
import { elementsOf, faultyElement } from './elements.ts';

/** What is wrong with a layout, with its layers and elements called as the editor calls them. */
export function inHerWords(fault: Problem, layout: NewLayout): Problem {
  const element = elementsOf(layout)[faultyElement(fault.field) ?? -1];
  if (element !== undefined && fault.field?.endsWith('.box')) {
    const name = editorWords.element(element.kind, words.layerName(element.id));
    return { ...fault, detail: editorWords.noRoom(name, layerCalled(layout, element.layer)) };
  }
  const named = layout.layers.reduce(
    (detail, { id }) => detail.replaceAll(`"${id}"`, layerCalled(layout, id)),
    fault.detail,
  );
  return { ...fault, detail: named };
}
