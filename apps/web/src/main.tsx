import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/index.css';
import { TextProvider, useText } from './texts/text-provider.tsx';
import { AppProviders } from './ui/app-providers.tsx';
import { PageHeader } from './ui/page-header.tsx';

function Hello() {
  const text = useText('ui');
  return <PageHeader title={text('product')} sub={text('hello')} />;
}

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root".');
createRoot(root).render(
  <StrictMode>
    <TextProvider>
      <AppProviders>
        <Hello />
      </AppProviders>
    </TextProvider>
  </StrictMode>,
);
