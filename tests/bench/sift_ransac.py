"""OpenCV's SIFT with the ratio test at .75, and RANSAC, over the pairs that a benchmark wrote.

    python3 sift_ransac.py FOLDER COUNT

FOLDER holds N-a.png (the reference) and N-b.png (the picture). Prints a line a pair: the time in ms of
the processor, and the nine numbers of the map from the picture to the reference, or nothing after the
time where there is none.
"""

import sys
import time

import cv2
import numpy

cv2.setNumThreads(1)
cv2.setRNGSeed(1)


def aligned(reference, picture):
    sift = cv2.SIFT_create()
    points_a, marks_a = sift.detectAndCompute(reference, None)
    points_b, marks_b = sift.detectAndCompute(picture, None)
    if marks_a is None or marks_b is None or len(points_a) < 2:
        return None
    matches = cv2.BFMatcher(cv2.NORM_L2).knnMatch(marks_b, marks_a, k=2)
    good = [two[0] for two in matches if len(two) == 2 and two[0].distance < 0.75 * two[1].distance]
    if len(good) < 4:
        return None
    from_b = numpy.float32([points_b[match.queryIdx].pt for match in good])
    to_a = numpy.float32([points_a[match.trainIdx].pt for match in good])
    found, _ = cv2.findHomography(from_b, to_a, cv2.RANSAC, 3.0)
    return found


def main():
    folder, count = sys.argv[1], int(sys.argv[2])
    for at in [0, *range(count)]:
        reference = cv2.imread(f"{folder}/{at}-a.png", cv2.IMREAD_GRAYSCALE)
        picture = cv2.imread(f"{folder}/{at}-b.png", cv2.IMREAD_GRAYSCALE)
        begun = time.process_time()
        found = aligned(reference, picture)
        took = (time.process_time() - begun) * 1000
        numbers = [] if found is None else [f"{number:.12g}" for number in found.flatten()]
        line = " ".join([f"{took:.3f}", *numbers])
        # The first pair is run twice; the first run initialises the library.
        if at > 0 or main.woken:
            print(line)
        main.woken = True


main.woken = False
main()
