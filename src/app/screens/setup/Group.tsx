import type { ReactNode } from 'react';

type GroupProps = {
  readonly title: string;
  readonly id: string;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
};

/** Fields that belong together. */
export const Group = ({ title, id, aside, children }: GroupProps): ReactNode => (
  <fieldset className="group" data-group={id}>
    <legend>{title}</legend>
    {aside === undefined ? null : <div className="aside">{aside}</div>}
    <div className="fields">{children}</div>
  </fieldset>
);

type WithPinProps = { readonly pin: ReactNode; readonly children: ReactNode };

/** A field and the pin that holds it. */
export const WithPin = ({ pin, children }: WithPinProps): ReactNode => (
  <div className="with-pin">
    {children}
    {pin}
  </div>
);
