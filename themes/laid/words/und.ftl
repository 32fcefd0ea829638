# Words of no one language: a catalogue in any language may need them.

# Articles at the head of titles, by the language of the title, with a bar between. An index files "The Last
# Ferry" under L (common practice, no source); the articles are those of the grammars. An article that ends in
# an apostrophe stands without a space before the next word.
articles-da = en | et | den | det
articles-de = der | die | das | ein | eine
articles-en = the | a | an
articles-es = el | la | los | las | un | una
articles-fr = le | la | les | un | une | l' | l’
articles-it = il | lo | la | i | gli | le | un | uno | una | l' | l’
articles-nl = de | het | een | 't | ’t
articles-no = en | ei | et | den | det
articles-pt = o | a | os | as | um | uma
articles-sv = en | ett | den | det
