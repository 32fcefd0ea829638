# The longer texts: cautions, how to cite, how to contribute, the data.
