import { createTheme } from '@mantine/core'
import type { CSSVariablesResolver, MantineColorsTuple } from '@mantine/core'

/** A deep pipe-green for what can be pressed. */
const pine: MantineColorsTuple = [
  '#eef6f3',
  '#dbebe5',
  '#b5d6cb',
  '#8bbfb0',
  '#66aa97',
  '#43917d',
  '#2c7a67',
  '#226756',
  '#195546',
  '#0f3f34',
]

/** Copper, for money and for what wants a second look. */
const copper: MantineColorsTuple = [
  '#fcf3ec',
  '#f6e3d4',
  '#eac4a6',
  '#dda376',
  '#d2874e',
  '#bd6c33',
  '#a35827',
  '#8a481d',
  '#713a16',
  '#55290d',
]

const gray: MantineColorsTuple = [
  '#faf9f6',
  '#f3f1ec',
  '#e8e5dd',
  '#d9d5cb',
  '#bfbab0',
  '#8d887e',
  '#69655c',
  '#4d4a43',
  '#36342f',
  '#22211e',
]

const dark: MantineColorsTuple = [
  '#ebe9e4',
  '#cfccc6',
  '#b3b0aa',
  '#8f8d88',
  '#565755',
  '#3f4140',
  '#2a2d2c',
  '#1d201f',
  '#171918',
  '#101211',
]

export const theme = createTheme({
  colors: { pine, copper, gray, dark },
  primaryColor: 'pine',
  primaryShade: { light: 8, dark: 6 },
  fontFamily: "'Inter', system-ui, sans-serif",
  headings: { fontFamily: "'Inter', system-ui, sans-serif", fontWeight: '650' },
  fontSizes: { xs: '1rem', sm: '1rem', md: '1.0625rem', lg: '1.1875rem', xl: '1.375rem' },
  defaultRadius: 'md',
  respectReducedMotion: true,
  cursorType: 'pointer',
  components: {
    InputWrapper: {
      defaultProps: { inputWrapperOrder: ['label', 'input', 'description', 'error'] },
      styles: {
        label: { marginBottom: '0.25rem' },
        description: { fontSize: '1rem', marginTop: '0.2rem' },
        error: { fontSize: '1rem', marginTop: '0.2rem' },
      },
    },
    Button: { defaultProps: { size: 'md' } },
    TextInput: { defaultProps: { size: 'md' } },
    Textarea: { defaultProps: { size: 'md' } },
    NativeSelect: { defaultProps: { size: 'md' } },
    Checkbox: { defaultProps: { size: 'md' } },
    Modal: { defaultProps: { closeButtonProps: { 'aria-label': 'Close' } } },
  },
})

/** Text that Mantine draws too pale to read, made darker in light and lighter in dark. */
export const schemeVariables: CSSVariablesResolver = () => ({
  variables: {},
  light: {
    '--mantine-color-body': '#f6f4ef',
    '--mantine-color-text': '#22211e',
    '--mantine-color-error': '#a3211b',
    '--mantine-color-dimmed': '#5c584f',
    '--mantine-color-placeholder': '#6b675e',
    '--mantine-color-anchor': '#195546',
    '--mantine-color-default-border': '#bfbab0',
  },
  dark: {
    '--mantine-color-body': '#171918',
    '--mantine-color-text': '#ebe9e4',
    '--mantine-color-error': '#ff9d92',
    '--mantine-color-dimmed': '#b9b6b0',
    '--mantine-color-placeholder': '#a09d97',
    '--mantine-color-anchor': '#8bbfb0',
    '--mantine-color-default-border': '#565755',
  },
})
