import { options, type ComponentChildren } from 'preact';
import { unbroken } from '../lengths/unbroken.ts';

const before = options.vnode?.bind(options);

/** No line of the page breaks inside a figure, whoever wrote the words: the page or the service. */
options.vnode = (node) => {
  if (typeof node.type === 'string') {
    const props = node.props as { children?: ComponentChildren };
    if (props.children !== undefined) props.children = whole(props.children);
  }
  before?.(node);
};

function whole(children: ComponentChildren): ComponentChildren {
  if (typeof children === 'string') return unbroken(children);
  return Array.isArray(children) ? children.map(whole) : children;
}
