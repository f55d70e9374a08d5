/** The page: fonts, styles, and the one root. */
import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-700.css';
import '@fontsource/atkinson-hyperlegible-mono/latin-500.css';
import '@fontsource/atkinson-hyperlegible-mono/latin-700.css';
import './style/paper.css';
import './style/floor.css';
import './style/sheet.css';
import './style/drawing.css';
import './style/card.css';
import './style/loads.css';
import './style/gas.css';
import './style/patch.css';
import './style/day.css';
import './style/slip.css';
import './style/forms.css';
import './style/phone.css';
import './style/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { Mishap } from './mishap.tsx';
import { PageState } from './state.tsx';

createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <Mishap>
      <PageState>
        <App />
      </PageState>
    </Mishap>
  </StrictMode>,
);
