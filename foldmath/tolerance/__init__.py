"""The hands: takes what each step did, gives what hands and paper can do, and how true it comes out."""
