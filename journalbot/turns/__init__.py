"""What a line can be beside a note or a question (an answer, a setting, a word taught …), and many notes at once."""
