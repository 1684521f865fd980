"""What the bench needs: cut list, mould, refractory, days and money."""
