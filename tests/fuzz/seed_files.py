"""Seeds as files of a folder, for the scripts that make them."""
import hashlib
import os


def read_all(folder):
    """The bytes of each file of a folder, in the order of their names."""
    for name in sorted(os.listdir(folder)):
        with open(os.path.join(folder, name), "rb") as file:
            yield file.read()


def write_all(folder, seeds):
    """A file for each, named for what it holds: the same seed twice is one."""
    os.makedirs(folder, exist_ok=True)
    for data in seeds:
        name = hashlib.sha256(data).hexdigest()[:16]
        with open(os.path.join(folder, name), "wb") as out:
            out.write(data)
