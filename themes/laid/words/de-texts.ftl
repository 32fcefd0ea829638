# Die längeren Texte: Vorbehalte, Zitieren, Beitragen, Daten.
