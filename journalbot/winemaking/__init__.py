"""The computing: pure functions.

Most take numbers and give numbers; those that judge a batch (care, worries, costs, cautions, making it again) take its
entries as plain data. Nothing here opens a journal, reads a question or words a reply.
"""
