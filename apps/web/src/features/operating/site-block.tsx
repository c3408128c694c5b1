import { useState } from 'react';
import { useMe } from '../../app/session.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import styles from './operating.module.css';
import { SiteDialog } from './site-dialog.tsx';

/** The site that this server is of: its name on every paper, its time zone and units for what is new. */
export function SiteBlock() {
  const text = useText('operating');
  const sessionText = useText('session');
  const { site } = useMe();
  const [changing, setChanging] = useState(false);
  return (
    <section className={styles.block}>
      <h2>{text('site')}</h2>
      <KeyValues
        items={[
          { name: sessionText('site-name'), value: site.name },
          { name: sessionText('time-zone'), value: site.timeZone.replaceAll('_', ' ') },
          { name: sessionText('units'), value: sessionText(`units-${site.units}`) },
        ]}
      />
      <Button label={text('change-site')} onClick={() => setChanging(true)}>
        {text('change')}
      </Button>
      {changing && <SiteDialog site={site} onClose={() => setChanging(false)} />}
    </section>
  );
}
