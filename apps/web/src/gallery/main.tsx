import { StrictMode, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { FormatProvider } from '../format/format-provider.tsx';
import '../styles/index.css';
import { TextProvider } from '../texts/text-provider.tsx';
import { AppProviders } from '../ui/app-providers.tsx';
import { NavFrame } from '../ui/nav-frame.tsx';
import { Answers } from './answers.tsx';
import { Asking } from './asking.tsx';
import { Controls } from './controls.tsx';
import { LongTable } from './long-table.tsx';
import { Plans } from './plans.tsx';
import { Tightening } from './tightening.tsx';

// Shows every part of src/ui to developers: `npm run dev -w @seatwell/web`, then /gallery.html. Not shipped.
const pages = {
  answers: { label: 'Today', page: Answers },
  table: { label: 'Register', page: LongTable },
  plans: { label: 'Bolt plans', page: Plans },
  controls: { label: 'Controls', page: Controls },
  asking: { label: 'Asking', page: Asking },
  tightening: { label: 'Tightening', page: Tightening },
};
type PageKey = keyof typeof pages;

const siteChoice = {
  system: 'SI',
  timeZone: 'Europe/London',
  shifts: [
    { name: 'Day', starts: '06:00', ends: '18:00' },
    { name: 'Night', starts: '18:00', ends: '06:00' },
  ],
} as const;

function Gallery() {
  const [key, setKey] = useState<PageKey>(() => {
    const asked = location.hash.slice(1);
    return asked in pages ? (asked as PageKey) : 'answers';
  });
  window.onhashchange = () => {
    const asked = location.hash.slice(1);
    if (asked in pages) setKey(asked as PageKey);
  };
  const Page = pages[key].page;
  if (key === 'tightening') return <Page />;
  return (
    <NavFrame
      name="Seatwell"
      where="Calder Sound · Spring 2027"
      items={Object.entries(pages).map(([each, { label }]) => ({
        key: each,
        label,
        href: `#${each}`,
        current: each === key,
        ...(each === 'answers' ? { count: { value: '3', tone: 'stop' as const } } : {}),
      }))}
      phoneKeys={['answers', 'table', 'plans', 'controls']}
      foot={
        <>
          Ines Okafor
          <br />
          Shutdown coordinator
        </>
      }
    >
      <Page />
    </NavFrame>
  );
}

const root = document.getElementById('root');
if (!root) throw new Error('gallery.html has no element with the id "root".');
createRoot(root).render(
  <StrictMode>
    <TextProvider>
      <FormatProvider choice={siteChoice}>
        <AppProviders>
          <Gallery />
        </AppProviders>
      </FormatProvider>
    </TextProvider>
  </StrictMode>,
);
