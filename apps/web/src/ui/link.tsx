import { type AnchorHTMLAttributes, type ComponentType, createContext, useContext } from 'react';

export type LinkProps = AnchorHTMLAttributes<HTMLAnchorElement> & {
  href: string;
};

function PlainLink(props: LinkProps) {
  return <a {...props} />;
}

/** The app gives its router's link here, so that parts can link without knowing the router. */
export const LinkContext = createContext<ComponentType<LinkProps>>(PlainLink);

/** A link inside the app. */
export function Link(props: LinkProps) {
  const Component = useContext(LinkContext);
  return <Component {...props} />;
}
