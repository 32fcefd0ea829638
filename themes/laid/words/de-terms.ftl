# Die Wörter des Glossars: `term-KEY` ist das Wort, `means-KEY`, was es hier bedeutet.
