"""What `rigc show` prints beside the sheets: no part of the folder of documents."""
