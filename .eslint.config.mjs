import { relative, sep } from 'node:path';
import tseslint from 'typescript-eslint';
import { importFault } from './tests/house/imports.mjs';

/** Holds the directions of imports of tests/house/imports.mjs while one types. */
const house = {
  rules: {
    imports: {
      create(context) {
        const file = relative(import.meta.dirname, context.filename)
          .split(sep)
          .join('/');
        const check = (node) => {
          if (!node.source) return;
          const fault = importFault(file, node.source.value);
          if (fault !== null) context.report({ node, message: fault });
        };
        return {
          ImportDeclaration: check,
          ExportNamedDeclaration: check,
          ExportAllDeclaration: check,
        };
      },
    },
  },
};

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', '.data/**', '**/*.mjs', '**/*.js', '**/*.d.mts'] },
  ...tseslint.configs.strictTypeChecked,
  ...tseslint.configs.stylisticTypeChecked,
  {
    plugins: { house },
    languageOptions: {
      parserOptions: {
        project: ['./tsconfig.json', './web/tsconfig.json'],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      'house/imports': 'error',
      // In loops over pixels the index is known to be in range.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/consistent-type-definitions': ['error', 'interface'],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/explicit-module-boundary-types': 'error',
    },
  },
  {
    files: ['tests/**/*.ts'],
    rules: { '@typescript-eslint/require-await': 'off' },
  },
);
