import type { FC } from 'hono/jsx';
import type { WhoModel } from '../../src/usecases/changes/show-who.ts';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { isOfThisMachine, NoPhoneReaches } from '../parts/no-phone-reaches.tsx';
import { QrCode } from '../parts/qr-code.tsx';

const ADDRESS = 'phone-address';

/** The address of Today as a square for a phone's camera, and in letters. */
const Address: FC<{ address: string }> = ({ address }) => (
  <>
    <QrCode text={address} label="The address of Today as a square to point a camera at" />
    <p>
      <label for={ADDRESS} class="hint">
        Address
      </label>
      <textarea id={ADDRESS} rows={2} readonly>
        {address}
      </textarea>
    </p>
    <div class="buttons">
      <button type="button" class="button plain" data-copy={ADDRESS} hidden>
        Copy address
      </button>
      <ButtonLink href="/today">Today</ButtonLink>
      <ButtonLink href="/yard">Your yard</ButtonLink>
    </div>
  </>
);

/** How to get to these pages from a phone. An address that no phone can follow is said to be one, in place of a square that leads nowhere. */
export const PhonePage: FC<{ model: WhoModel; address: string }> = ({ model, address }) =>
  isOfThisMachine(address) ? (
    <>
      <Answer note={`These pages of ${model.yardName} are open at an address of this machine itself.`}>
        A phone can't get here yet.
      </Answer>
      <NoPhoneReaches address={address} what="it" />
      <p>
        As it is started, Mould Rota answers this machine alone. Whoever set it up can have it answer in your own
        network (see HOST in the README), where everybody signs in; open this page at that address then, and the square
        for the camera is here.
      </p>
      <div class="buttons">
        <ButtonLink href="/today">Today</ButtonLink>
        <ButtonLink href="/yard">Your yard</ButtonLink>
      </div>
    </>
  ) : (
    <>
      <Answer note="The phone has to be in the same network as this machine, unless the address is one of the internet. Whoever follows it signs in first.">
        Point the phone's camera at the square.
      </Answer>
      <Address address={address} />
    </>
  );
