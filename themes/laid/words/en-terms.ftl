# The terms of the glossary: `term-KEY` is the word, `means-KEY` what it means here.
